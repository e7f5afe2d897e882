using CutShop.Paper.Drawings;
using CutShop.Paper.Words;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Tickets;

/// <summary>What a table says of screws beside their heights.</summary>
/// <param name="Screws">How many of which, and under it what for.</param>
/// <param name="Face">The face they are driven from, and how their holes lie in it where that is not square to its middle.</param>
/// <param name="Head">The hole for the head: a counterbore or a countersink.</param>
/// <param name="Pilot">The pilot with its depth, and the hole for a plain shank with its own.</param>
internal sealed record ScrewCells(string Screws, string Face, string Head, string Pilot)
{
    /// <summary>The cells of a fixing.</summary>
    public static ScrewCells Of(Fixing fixing, PostWork work, PaperSettings settings)
    {
        var (text, figures) = (settings.Text, settings.Figures);
        return new(
            $"{Figures.Count(fixing.Count)} × {text.Holder(fixing.Driven, figures.Both(fixing.Length))}\n{text.Purpose(fixing.Purpose)}",
            Lines([text.FaceName(fixing.Face), .. RakeText.HolesOf(fixing, work, settings)]),
            fixing.Screw is null ? text["None"] : Lines(text.HeadHole(fixing), figures.Both(fixing.Counterbore), Deep(fixing.CounterboreDepth)),
            Lines(
                fixing.Pilot == Length.Zero ? text["None"] : figures.Both(fixing.Pilot),
                fixing.Pilot == Length.Zero || fixing.Purpose == FixingPurpose.Wrap ? "" : Deep(fixing.PilotDepth),
                fixing.ShankHole == Length.Zero ? "" : text["ShankHole", figures.Both(fixing.ShankHole)]
                    + (fixing.Purpose == FixingPurpose.Wrap || fixing.ShankDepth == Length.Zero ? "" : $", {text["Deep", figures.Lead(fixing.ShankDepth)]}")));

        string Deep(Length depth) => depth == Length.Zero ? "" : text["Deep", figures.Both(depth)];

        static string Lines(params IEnumerable<string> lines) => string.Join('\n', lines.Where(line => line.Length > 0));
    }
}
