using CutShop.Paper.Words;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Tickets;

/// <summary>What a table says of screws beside their heights.</summary>
/// <param name="Screws">How many of which, and under it what for.</param>
/// <param name="Face">The face they are driven from.</param>
/// <param name="Counterbore">The counterbore or countersink.</param>
/// <param name="Pilot">The pilot, and the hole for a plain shank.</param>
internal sealed record ScrewCells(string Screws, string Face, string Counterbore, string Pilot)
{
    /// <summary>The cells of a fixing.</summary>
    public static ScrewCells Of(Fixing fixing, PaperSettings settings)
    {
        var (text, figures) = (settings.Text, settings.Figures);
        return new(
            $"{Figures.Count(fixing.Count)} × {text.Holder(fixing.Driven, figures.Both(fixing.Length))}\n{text.Purpose(fixing.Purpose)}",
            text.FaceName(fixing.Face),
            With(fixing.Counterbore, fixing.CounterboreDepth, "CounterboreDeep"),
            With(fixing.Pilot, fixing.ShankHole, "ShankHole"));

        string With(Length hole, Length more, string key) =>
            (hole == Length.Zero ? text["None"] : figures.Stacked(hole)) + (more == Length.Zero ? "" : "\n" + text[key, figures.Both(more)]);
    }
}
