using System.Text.Json;
using CutShop.Shop;
using CutShop.Takeoff;

namespace CutShop.Web.OnSite;

/// <summary>
/// Writes all pages of a site pack as one JSON object, for a phone to store: <c>job</c>, <c>pieces</c> (how many),
/// <c>pages</c> (the HTML of each by its path) and <c>lines</c> (by each piece's line address, the one that is stored for its line).
/// </summary>
internal sealed class SitePackPages(OwnPages pages)
{
    private const int FlushAt = 64 * 1024;

    /// <summary>Writes the pack, or of one piece what may have changed with it.</summary>
    /// <param name="reader">Who asks.</param>
    /// <param name="pack">The pack.</param>
    /// <param name="only">The one piece, or null for all.</param>
    /// <param name="to">Where to.</param>
    public async Task WriteAsync(HttpContext reader, SitePack pack, PieceCode? only, Stream to)
    {
        var cancel = reader.RequestAborted;
        var pieces = only is { } code ? [.. pack.Pieces.Where(piece => piece.Code == code)] : pack.Pieces;
        var firsts = pack.Pieces.GroupBy(piece => piece.Piece.Line.Mark).ToDictionary(line => line.Key, line => line.First().Code);
        await using var json = new Utf8JsonWriter(to);
        json.WriteStartObject();
        json.WriteString("job", pack.Job);
        json.WriteNumber("pieces", pack.Pieces.Count);
        json.WriteStartObject("pages");
        foreach (var path in Paths(pack, pieces, firsts))
        {
            if (await pages.ReadAsync(reader, path) is { } html)
                json.WriteString(path, html);
            if (json.BytesPending > FlushAt)
                await json.FlushAsync(cancel);
        }
        json.WriteEndObject();
        json.WriteStartObject("lines");
        foreach (var piece in pieces)
            json.WriteString(SiteAddress.Line(piece.Code), SiteAddress.Line(firsts[piece.Piece.Line.Mark]));
        json.WriteEndObject();
        json.WriteEndObject();
        await json.FlushAsync(cancel);
    }

    private static IEnumerable<string> Paths(SitePack pack, IReadOnlyList<LinePiece> pieces, Dictionary<string, PieceCode> firsts)
    {
        yield return SiteAddress.Find;
        yield return SiteAddress.Pack(pack.Code);
        foreach (var line in pieces.Select(piece => piece.Piece.Line.Mark).Distinct())
            yield return SiteAddress.Line(firsts[line]);
        foreach (var piece in pieces)
        {
            yield return SiteAddress.Piece(piece.Code);
            yield return SiteAddress.Report(piece.Code);
        }
    }
}
