using System.Globalization;

namespace CutShop.Benchmarks.Trust;

/// <summary>How much is done for each figure of trust.</summary>
internal sealed record TrustDose
{
    /// <summary>The options that set a part of it, each followed by a number or a name.</summary>
    public static IReadOnlyDictionary<string, Func<TrustDose, string, TrustDose>> Options { get; } = new Dictionary<string, Func<TrustDose, string, TrustDose>>
    {
        ["--kills"] = (dose, number) => dose with { Kills = Read(number) },
        ["--lengths"] = (dose, number) => dose with { Lengths = Read(number) },
        ["--files"] = (dose, number) => dose with { Files = Read(number) },
        ["--days"] = (dose, number) => dose with { Days = Read(number) },
        ["--seconds"] = (dose, number) => dose with { Load = TimeSpan.FromSeconds(Read(number)) },
        ["--store"] = (dose, name) => dose with { IsOnServer = name == "postgresql" },
    };

    /// <summary>Times the server is killed.</summary>
    public int Kills { get; init; } = 200;

    /// <summary>Broken lengths, and as many broken codes.</summary>
    public int Lengths { get; init; } = 1_000_000;

    /// <summary>Broken job files, and a tenth as many broken sheets and photos.</summary>
    public int Files { get; init; } = 100_000;

    /// <summary>Days of slips at the benches.</summary>
    public int Days { get; init; } = 3_000;

    /// <summary>How long tablets and phones work.</summary>
    public TimeSpan Load { get; init; } = TimeSpan.FromMinutes(5);

    /// <summary>True where forms are tried, and tablets and phones work, on a shop whose database is on a server, which is started for it.</summary>
    public bool IsOnServer { get; init; }

    private static int Read(string number) => int.Parse(number, CultureInfo.InvariantCulture);
}
