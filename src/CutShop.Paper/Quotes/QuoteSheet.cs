using CutShop.Paper.Allowed;
using CutShop.Paper.Drawings;
using CutShop.Paper.Sheets;
using CutShop.Paper.Words;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Quotes;

/// <summary>A line of a quote, its amounts written out.</summary>
/// <param name="What">What it is for.</param>
/// <param name="Quantity">How much.</param>
/// <param name="Price">The price of one.</param>
/// <param name="Amount">The amount.</param>
public sealed record QuotedLine(string What, string Quantity, string Price, string Amount);

/// <summary>A quote's figures, its amounts written out.</summary>
/// <param name="Number">The quote's number.</param>
/// <param name="MadeOn">The day it was made.</param>
/// <param name="ValidUntil">The last day it is valid.</param>
/// <param name="Lines">What is charged.</param>
/// <param name="Net">The sum.</param>
/// <param name="TaxShare">The share of tax.</param>
/// <param name="Tax">The tax.</param>
/// <param name="Total">Sum and tax.</param>
public sealed record QuoteFigures(
    long Number, DateOnly MadeOn, DateOnly ValidUntil, IReadOnlyList<QuotedLine> Lines, string Net, string TaxShare, string Tax, string Total);

/// <summary>A quote on paper: what is charged, what is included, how it stands and what to beware of.</summary>
public static class QuoteSheet
{
    private const int MostDrawings = 12;
    private const int MostKindsOfPosts = 3;

    /// <summary>The sheet.</summary>
    /// <param name="supplier">Who quotes, over the quote's name; empty where the shop has not said.</param>
    /// <param name="address">How the supplier is reached, a line each; may be empty.</param>
    /// <param name="quote">The quote's figures.</param>
    /// <param name="takeoff">The job.</param>
    /// <param name="settings">Page, units and words.</param>
    public static Sheet Of(string supplier, string address, QuoteFigures quote, JobTakeoff takeoff, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(quote);
        ArgumentNullException.ThrowIfNull(takeoff);
        ArgumentNullException.ThrowIfNull(settings);
        var (text, job) = (settings.Text, takeoff.Job);
        var blocks = new List<Block>
        {
            new FieldsBlock(
            [
                .. address.Length == 0 ? Array.Empty<Field>() : [new(text["Supplier"], address)],
                new(text["Customer"], job.Customer),
                new(text["Job"], job.Number),
                new(text["Due"], job.Due is { } due ? IsoDate.Text(due) : "–"),
                new(text["QuoteMade"], IsoDate.Text(quote.MadeOn)),
                new(text["ValidUntil"], IsoDate.Text(quote.ValidUntil)),
            ])
            { IsOneRow = true },
            new BigFigureBlock(text["Total"], quote.Total, text["TaxIncluded", quote.Tax, quote.TaxShare]),
            new TableBlock(
                text["QuotedLines"],
                text.Parts("QuotedColumns"),
                [
                    .. quote.Lines.Select(line => (IReadOnlyList<string>)[line.What, line.Quantity, line.Price, line.Amount]),
                    [text["NetSum"], "", "", quote.Net],
                    [text["TaxLine", quote.TaxShare], "", "", quote.Tax],
                    [text["Total"], "", "", quote.Total],
                ])
            { FiguresFrom = 1, StrongRows = 1 },
            new SideBySideBlock(
                new StepsBlock(text["Included"], IncludedIn(takeoff, settings)),
                new CautionsBlock(text["Cautions"], [.. AllowedHere.Guards(job.Lines, settings), .. text.RailingCautions, text["QuotedLengths"], text["QuotedRope"]])),
        };
        blocks.AddRange(job.Lines.SelectMany(line => Elevation.Overview(takeoff, line, settings)).Select(drawing => new DrawingBlock(drawing)).Concat(Plans(takeoff, settings)).Take(MostDrawings));
        blocks.AddRange(AllowedHere.Of(takeoff, job.Lines, settings));
        return new(supplier, text["QuoteName", quote.Number], text.Foot(job.Number, text["QuoteName", quote.Number]), blocks);
    }

    private static IReadOnlyList<string> IncludedIn(JobTakeoff takeoff, PaperSettings settings)
    {
        var (text, pieces) = (settings.Text, takeoff.Pieces.Count);
        var ours = takeoff.Bores.Where(bore => bore.IsMadeInShop).ToList();
        var (bores, bored) = (ours.Count, ours.Select(bore => bore.Post.Mark).Distinct().Count());
        return
        [
            text[pieces == 1 ? "IncludedPiece" : "IncludedPieces", pieces],
            text[bores == 1 ? "IncludedBore" : bored == 1 ? "IncludedBoresInPost" : "IncludedBores", bores, bored, PostsOf(takeoff.Job, settings)],
            text["IncludedPaper"],
            .. settings.IsForSalt && takeoff.Fixings.Count > 0 ? [text["ScrewsForSalt"]] : (string[])[],
        ];
    }

    /// <summary>The job's posts by shape and size, the most first; a few kinds, so that they stay a line or two.</summary>
    private static string PostsOf(Job job, PaperSettings settings)
    {
        var (text, figures) = (settings.Text, settings.Figures);
        var kinds = job.Posts.GroupBy(post => (post.Shape, post.Across, post.Height))
            .Select(kind => (kind.Key.Shape, kind.Key.Across, kind.Key.Height, Count: kind.Count()))
            .OrderByDescending(kind => kind.Count)
            .ToList();
        var said = kinds.Take(MostKindsOfPosts).Select(kind => text[kind.Shape == PostShape.Square ? "SquarePosts" : "RoundPosts", kind.Count, figures.Both(kind.Across), figures.Both(kind.Height)]);
        var others = kinds.Skip(MostKindsOfPosts).Sum(kind => kind.Count);
        return string.Join("; ", others > 0 ? said.Append(text["OtherPosts", others]) : said);
    }

    /// <summary>Plans as large as there is room for under the elevations.</summary>
    private static IEnumerable<DrawingBlock> Plans(JobTakeoff takeoff, PaperSettings settings) => Plan.Of(takeoff, settings).Select((drawing, i) => new DrawingBlock(drawing)
    {
        Smaller = Plan.SmallerHeights.Select(tallest => Plan.Of(takeoff, settings, tallest: tallest)[i]),
    });
}
