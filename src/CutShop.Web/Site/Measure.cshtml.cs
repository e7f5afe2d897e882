using CutShop.Shop.Site;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Rules;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Mvc;

using static CutShop.Web.Site.SiteWords;

namespace CutShop.Web.Site;

/// <summary>Holds a piece against spans that were measured on site: what is over or short, and the sag it gives now.</summary>
public sealed class MeasureModel(PieceShelf pieces) : LabelPage
{
    /// <summary>The piece.</summary>
    public SitePiece? Found { get; private set; }

    /// <summary>Each section with what was typed for it.</summary>
    public IReadOnlyList<MeasuredField> Sections { get; private set; } = [];

    /// <summary>What the whole piece is over, with the spans that were measured; null until one was, below zero where it is short.</summary>
    public Length? Over { get; private set; }

    /// <summary>Shows the form, or what comes of the spans typed: one <c>span</c> a section, in order; an empty one is as planned.</summary>
    public IActionResult OnGet()
    {
        Found = Find(pieces.Find, found => found.Label);
        if (Found is not { Piece: { } piece })
            return Found is null ? Page() : Redirect($"/p/{Found.Code.Plain}/dropped");
        var typed = Request.Query["span"];
        Sections = [.. piece.Sections.Index().Select(pair => Read(piece, pair.Index, pair.Index < typed.Count ? typed[pair.Index]! : ""))];
        var measured = Sections.Where(section => section.Result is not null).ToList();
        if (measured.Count > 0)
            Over = measured.Aggregate(Length.Zero, (sum, section) => sum + section.Result!.Over);
        return Page();
    }

    private MeasuredField Read(Piece piece, int index, string typed)
    {
        var planned = piece.Sections[index].Clear;
        if (typed.Trim().Length == 0)
            return new(piece.Sections[index], planned, "", Problem: null, Result: null);
        var length = PersonUnits.Read(HttpContext, typed);
        var problem = !length.IsGood ? T["NotALength", typed]
            : length.Value <= Length.Zero || length.Value > MeasuredSpan.Longest ? T["SpanOutOfRange", typed, Both(MeasuredSpan.Longest)]
            : null;
        return new(piece.Sections[index], planned, typed, problem, problem is null ? MeasuredSpan.Of(piece, index, length.Value) : null);
    }
}
