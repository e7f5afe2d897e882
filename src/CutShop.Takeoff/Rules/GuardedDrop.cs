using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.Rules;

/// <summary>Where codes ask for a guard, which a rope railing is not.</summary>
public static class GuardedDrop
{
    /// <summary>A drop deeper than this asks for a guard: 30 in. Source: International Building Code as cited in USDA Forest Service 0723-2329-MTDC.</summary>
    public static Length Over { get; } = Length.FromInches(30);

    /// <summary>True where a drop asks for a guard; one that nobody gave does not.</summary>
    public static bool NeedsGuard(Length? drop) => drop > Over;

    /// <summary>The deepest drop beside a line that asks for a guard, or null.</summary>
    public static Length? Of(Line line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return line.Sections.Select(section => section.Drop ?? line.Drop).Where(drop => NeedsGuard(drop)).Max();
    }
}
