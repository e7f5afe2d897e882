using System.Globalization;

namespace CutShop.Testing.CutPlans;

/// <summary>A published bin-packing instance: coils of one capacity, none on hand, fewest wanted.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Set">The set it was published in.</param>
/// <param name="Capacity">What a coil takes.</param>
/// <param name="BestKnown">The fewest coils known.</param>
/// <param name="Items">Item lengths.</param>
public sealed record PublishedInstance(string Name, string Set, long Capacity, int BestKnown, IReadOnlyList<long> Items)
{
    private static string Folder => Path.Combine(AppContext.BaseDirectory, "Instances");

    /// <summary>All instances in the order of the index.</summary>
    public static IEnumerable<PublishedInstance> All() =>
        File.ReadLines(Path.Combine(Folder, "index.csv")).Skip(1).Select(line => line.Split(',')).Select(Read);

    /// <summary>One instance by its name.</summary>
    public static PublishedInstance Named(string name) => All().First(instance => instance.Name == name);

    private static PublishedInstance Read(string[] row)
    {
        var numbers = File.ReadLines(Path.Combine(Folder, row[0] + ".txt"))
            .Where(line => !string.IsNullOrWhiteSpace(line))
            .Select(line => long.Parse(line.Trim(), CultureInfo.InvariantCulture))
            .ToList();
        return new(row[0], row[1], numbers[0], int.Parse(row[4], CultureInfo.InvariantCulture), numbers[1..]);
    }
}
