using System.Net;
using System.Text.Encodings.Web;
using System.Text.Json;
using CutShop.Shop.Site;
using CutShop.Takeoff.Result;

namespace CutShop.Web.Site;

/// <summary>
/// Writes all pages of a site pack for a phone to store, a JSON object a line so that it can store each as it comes:
/// <c>path</c> with <c>html</c> is a page, <c>path</c> with <c>same</c> an address that another page answers, <c>ended</c> says that the page is of a
/// label that no longer counts, and <c>pieces</c>, the last, says how many pieces there are and that all has come.
/// </summary>
internal sealed class SitePackPages(InternalPages pages)
{
    /// <summary>The type of what is written.</summary>
    public const string ContentType = "application/x-ndjson; charset=utf-8";

    // It is never put into a page, so marks of HTML need not be written as six characters each.
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Writes the pack, or of one piece what may have changed with it: of a label that no longer counts, the page that says so.</summary>
    /// <param name="reader">Who asks.</param>
    /// <param name="pack">The pack.</param>
    /// <param name="only">The one piece, or null for all.</param>
    /// <param name="to">Where to.</param>
    public async Task WriteAsync(HttpContext reader, SitePack pack, PieceCode? only, Stream to)
    {
        var pieces = only is { } code ? [.. pack.Pieces.Where(piece => piece.Code == code)] : pack.Pieces;
        var firsts = pack.Pieces.GroupBy(piece => piece.Piece.Line).ToDictionary(line => line.Key, line => line.First().Code);
        foreach (var path in Paths(pack, pieces, firsts))
        {
            if (await pages.ReadAsync(reader, path) is { } html)
                await LineAsync(new { path, html });
        }
        foreach (var piece in pieces.Where(piece => piece.Code != firsts[piece.Piece.Line]))
        {
            foreach (var page in PagesOfLine(pack, piece))
                await LineAsync(new { path = page(piece.Code), same = page(firsts[piece.Piece.Line]) });
        }
        if (only is { } old && pieces.Count == 0)
            await EndedAsync(old);
        await LineAsync(new { pieces = pack.Pieces.Count });

        async Task EndedAsync(PieceCode label)
        {
            var (path, html) = (SitePaths.Piece(label), await pages.ReadAsync(reader, SitePaths.Dropped(label), HttpStatusCode.Gone));
            if (html is null)
                return;
            foreach (var other in (string[])[SitePaths.Line(label), SitePaths.Bores(label), SitePaths.SetOut(label), SitePaths.Measure(label), SitePaths.Report(label)])
                await LineAsync(new { path = other, same = path });
            // Last, since a phone that has it asks no more.
            await LineAsync(new { path, html, ended = true });
        }

        async Task LineAsync<T>(T line)
        {
            await JsonSerializer.SerializeAsync(to, line, Json, reader.RequestAborted);
            await to.WriteAsync("\n"u8.ToArray(), reader.RequestAborted);
        }
    }

    /// <summary>The pages that all pieces of a line have in common, by a piece's code.</summary>
    private static IEnumerable<Func<PieceCode, string>> PagesOfLine(SitePack pack, LinePiece piece)
    {
        yield return SitePaths.Line;
        if (pack.LinesForSite.Contains(piece.Piece.Line))
            yield return SitePaths.Bores;
        if (piece.Piece.IsSetOut)
            yield return SitePaths.SetOut;
    }

    private static IEnumerable<string> Paths(SitePack pack, IReadOnlyList<LinePiece> pieces, Dictionary<string, PieceCode> firsts)
    {
        yield return SitePaths.Find;
        yield return SitePaths.Pack(pack.Code);
        foreach (var line in pieces.DistinctBy(piece => piece.Piece.Line))
        {
            foreach (var page in PagesOfLine(pack, line))
                yield return page(firsts[line.Piece.Line]);
        }
        foreach (var piece in pieces)
        {
            yield return SitePaths.Piece(piece.Code);
            yield return SitePaths.Measure(piece.Code);
            yield return SitePaths.Report(piece.Code);
        }
    }
}
