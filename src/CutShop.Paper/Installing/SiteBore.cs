using CutShop.Paper.Drawings;
using CutShop.Paper.Words;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Rules;

namespace CutShop.Paper.Installing;

/// <summary>A bore that is made where its post stands, or is there already, in words: for pages and sheets alike.</summary>
/// <param name="Bore">The bore.</param>
/// <param name="Number">Its number among those of its row.</param>
/// <param name="Name">What it is called: its row, and at a corner the face that it goes into.</param>
/// <param name="Marks">Where its centre is marked, face by face, with heights from the datum and from the top.</param>
/// <param name="Direction">Level or raked, with the rise over the post's width, and how far off the square; empty for a hole that is there.</param>
/// <param name="Size">Its bit, or how wide the hole is.</param>
/// <param name="Depth">How deep, or that nothing is to be bored.</param>
public sealed record SiteBore(Bore Bore, int Number, string Name, IReadOnlyList<string> Marks, string Direction, string Size, string Depth)
{
    /// <summary>The bores of a post, from the top down.</summary>
    /// <param name="work">The work at a post that is bored on site.</param>
    /// <param name="settings">Units and words.</param>
    public static IReadOnlyList<SiteBore> Of(PostWork work, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(work);
        ArgumentNullException.ThrowIfNull(settings);
        return [.. work.NumberedBores.OrderByDescending(numbered => numbered.Bore.Height).Select(numbered => Of(numbered, work, settings))];
    }

    private static SiteBore Of(NumberedBore numbered, PostWork work, PaperSettings settings)
    {
        var (bore, text, figures) = (numbered.Bore, settings.Text, settings.Figures);
        return bore.IsExisting
            ? new(
                bore,
                numbered.Number,
                numbered.HasOther ? text["RowAndBore", bore.Row, numbered.Number] : bore.Row,
                [Height(bore.Height)],
                "",
                text["HoleAcross", figures.Both(bore.Bit)],
                text["HoleIsThere"])
            : new(
                bore,
                numbered.Number,
                numbered.HasOther ? $"{bore.Row}, {text.FaceName(bore.Operations[0].Face)}" : bore.Row,
                Marks(),
                DirectionOf(bore, work, settings),
                $"{text.BitKindName(bore.BitChoice.Kind)} {figures.Both(bore.Bit)}",
                bore.Operations.Count > 1 ? text["ThroughFromBothFaces", figures.Both(bore.Operations[0].Depth)] : text["StoppedAt", figures.Both(bore.Operations[0].Depth)]);

        IReadOnlyList<string> Marks() => bore.Operations.Count > 1 && bore.Operations.All(operation => operation.Mark == bore.Operations[0].Mark)
            ? [$"{text["BothFaces"]}: {Height(bore.Operations[0].Mark)}"]
            : [.. bore.Operations.Select(operation => $"{text.FaceName(operation.Face)}: {Height(operation.Mark)}")];

        // Always from two ends of the post, so that one checks the other.
        string Height(Length aboveGround) => work.Datum == Datum.Top
            ? $"{text.HeightOn(work.Post, Datum.Top, aboveGround, figures.Both)} · {figures.Both(aboveGround)} {text.NameOf(Datum.Ground)}"
            : text.HeightOn(work.Post, work.Datum, aboveGround, figures.Both);
    }

    private static string DirectionOf(Bore bore, PostWork work, PaperSettings settings)
    {
        var (text, figures) = (settings.Text, settings.Figures);
        var rake = bore.IsRaked
            ? text["RakedOver", RakeText.Of(bore, work, settings), figures.Both(FaceMark.RiseOver(work.Post.Across, bore.RakeDegrees))]
            : text["Level"];
        return bore.SkewDegrees > 0 ? text["OffTheSquare", rake, Figures.Degrees(bore.SkewDegrees)]
            : bore.KinkDegrees > 0 ? text["AlongTheBisector", rake, Figures.Degrees(bore.KinkDegrees)]
            : rake;
    }
}
