using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.RegularExpressions;
using CutShop.Paper.Drawings;
using CutShop.Paper.Sheets;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Result;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Html;

namespace CutShop.Web.Orders;

/// <summary>A stretch of a draft's line that its page draws at a time: the one in which somebody types.</summary>
/// <param name="LineIndex">The line's place among the draft's lines.</param>
/// <param name="Bands">The line's elevation.</param>
/// <param name="Band">The posts it goes from and to.</param>
public sealed partial record DraftStretch(int LineIndex, LineBands Bands, Band Band)
{
    /// <summary>Its first post as a field of the draft's form, which stands for the stretch in addresses and choices.</summary>
    public string Field => string.Create(CultureInfo.InvariantCulture, $"lines[{LineIndex}].posts[{Band.First}]");

    /// <summary>The stretch in words.</summary>
    public string Name => $"Line {Line.Mark}, post {Line.Posts[Band.First].Mark} to {Line.Posts[Band.Last].Mark}";

    private Line Line => Bands.Line;

    /// <summary>All stretches of a job in order; at least one.</summary>
    public static IReadOnlyList<DraftStretch> Of(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        return [.. job.Lines.Select(LineBands.Of).Index().SelectMany(line => line.Item.Bands.Select(band => new DraftStretch(line.Index, line.Item, band)))];
    }

    /// <summary>The stretch that a field speaks of: that of its post or section, else the first of its line, else the first of all.</summary>
    /// <param name="all">All stretches of the job.</param>
    /// <param name="field">A field of the form or the beginning of its name, such as <c>lines[0].posts[12].across</c>; null for none.</param>
    public static DraftStretch At(IReadOnlyList<DraftStretch> all, string? field)
    {
        ArgumentNullException.ThrowIfNull(all);
        var place = Place().Match(field ?? "");
        var line = place.Success ? Index(place.Groups["line"]) : 0;
        var index = place.Groups["index"] is { Success: true } group ? Index(group) : 0;
        return all.LastOrDefault(stretch => stretch.LineIndex == line && stretch.Band.First <= index && index <= stretch.Band.Last)
            ?? all.FirstOrDefault(stretch => stretch.LineIndex == line)
            ?? all[0];
    }

    /// <summary>The options of a list to choose a stretch from. Written by hand: a long line has many, and they come with each keystroke.</summary>
    public static IHtmlContent Choices(IReadOnlyList<DraftStretch> all, DraftStretch chosen)
    {
        ArgumentNullException.ThrowIfNull(all);
        var html = new StringBuilder();
        foreach (var stretch in all)
            html.Append("<option value=\"").Append(stretch.Field).Append(stretch == chosen ? "\" selected>" : "\">").Append(HtmlEncoder.Default.Encode(stretch.Name)).Append("</option>");
        return new HtmlString(html.ToString());
    }

    /// <summary>What hangs in the stretch: each piece with its sections there, row by row.</summary>
    public IEnumerable<(Piece Piece, PieceSection Section)> Hanging(JobTakeoff takeoff)
    {
        ArgumentNullException.ThrowIfNull(takeoff);
        return takeoff.Pieces
            .Where(piece => piece.Line == Line.Mark && piece.First < Band.Last && piece.Last > Band.First)
            .SelectMany(piece => piece.Sections
                .Take(Band.Last - piece.First)
                .Skip(Band.First - piece.First)
                .Select(section => (piece, section)));
    }

    private static int Index(Group digits) => int.Parse(digits.ValueSpan, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^lines\[(?<line>\d{1,6})\](?:\.(?:posts|sections)\[(?<index>\d{1,6})\])?", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Place();
}
