using CutShop.CutPlan;
using CutShop.Shop.Store;
using CutShop.Takeoff.Lengths;

namespace CutShop.Shop.Stock;

/// <summary>What the shop has set; what it has not set has its default.</summary>
public sealed class CuttingSettingsShelf(ShopDatabase database)
{
    private const string Kerf = "kerf";
    private const string Squaring = "squaring";
    private const string FirstTrim = "first trim";
    private const string Keep = "keep";
    private const string StandardLengths = "standard lengths";

    private static readonly Length LongestTrim = Length.Foot * 10;
    private static readonly Length LongestCoil = Length.Foot * 30_000;

    /// <summary>How the shop cuts and buys rope.</summary>
    public CuttingSettings Cutting => database.Read(ReadCutting);

    /// <summary>Sets how the shop cuts and buys rope, from texts as typed.</summary>
    /// <param name="typed">Kerf, squaring, first trim, keep length, and standard lengths with semicolons between.</param>
    /// <param name="who">Who sets it.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    /// <returns>The problems, by field; empty where all is stored.</returns>
    public async Task<IReadOnlyList<FieldProblem>> SetCuttingAsync(CuttingTyped typed, string who, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(typed);
        var problems = new List<FieldProblem>();
        var kerf = Read(nameof(typed.Kerf), typed.Kerf, Length.Zero, LongestTrim);
        var squaring = Read(nameof(typed.Squaring), typed.Squaring, Length.Zero, LongestTrim);
        var firstTrim = Read(nameof(typed.FirstTrim), typed.FirstTrim, Length.Zero, LongestTrim);
        var keep = Read(nameof(typed.Keep), typed.Keep, Length.FromNanometres(1), LongestCoil);
        var standard = typed.StandardLengths.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .Select(text => Read(nameof(typed.StandardLengths), text, Length.Foot, LongestCoil)).ToList();
        if (problems.Count > 0)
            return problems;
        await database.WriteAsync(
            session =>
            {
                StoredSettings.Change(
                    session,
                    who,
                    (Kerf, kerf.ToString()),
                    (Squaring, squaring.ToString()),
                    (FirstTrim, firstTrim.ToString()),
                    (Keep, keep.ToString()),
                    (StandardLengths, Joined(standard)));
                return who;
            },
            cancel).ConfigureAwait(false);
        return [];

        Length Read(string field, string text, Length least, Length most)
        {
            var parsed = LengthText.Parse(text);
            if (parsed is { IsGood: true, Value: var length } && length >= least && length <= most)
                return length;
            problems.Add(new(field, text, parsed.Reason ?? SettingsReplies.Of("FromTo", least, most)));
            return default;
        }
    }

    internal static CuttingSettings ReadCutting(ShopSession session)
    {
        var stored = StoredSettings.All(session);
        var standard = CuttingSettings.Default;
        return new(
            new CutAllowances(
                stored.LengthOf(Kerf, standard.Allowances.Kerf),
                stored.LengthOf(Squaring, standard.Allowances.Squaring),
                stored.LengthOf(FirstTrim, standard.Allowances.FirstTrim),
                stored.LengthOf(Keep, standard.Allowances.Keep)),
            stored.TryGetValue(StandardLengths, out var lengths)
                ? [.. lengths.Split(';', StringSplitOptions.RemoveEmptyEntries).Select(text => LengthText.Parse(text).OrThrow())]
                : standard.StandardLengths);
    }

    /// <summary>Standard lengths as they are typed and stored.</summary>
    public static string Joined(IEnumerable<Length> lengths) => string.Join("; ", lengths);
}

/// <summary>Cutting settings as typed.</summary>
/// <param name="Kerf">Lost at each cut.</param>
/// <param name="Squaring">Lost to square the end at each cut.</param>
/// <param name="FirstTrim">Taken off a coil's ragged end.</param>
/// <param name="Keep">The shortest length that goes to the rack.</param>
/// <param name="StandardLengths">Lengths of coils that can be bought, with semicolons between; empty where none can.</param>
public sealed record CuttingTyped(string Kerf, string Squaring, string FirstTrim, string Keep, string StandardLengths);
