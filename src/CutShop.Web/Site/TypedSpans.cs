using CutShop.Shop.Orders;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Rules;
using CutShop.Web.Shared;
using Microsoft.Extensions.Primitives;

using static CutShop.Web.Site.SiteWords;

namespace CutShop.Web.Site;

/// <summary>Reads the spans that were typed for a piece: one field a section, in order; an empty one is as planned.</summary>
internal static class TypedSpans
{
    /// <summary>Each section with what was typed for it.</summary>
    /// <param name="context">Who typed it: a bare number is in the unit that leads for them.</param>
    /// <param name="piece">The piece.</param>
    /// <param name="typed">The fields.</param>
    public static IReadOnlyList<MeasuredField> Read(HttpContext context, Piece piece, StringValues typed) =>
        [.. piece.Sections.Select((section, i) => Read(context, section, (i < typed.Count ? typed[i] ?? "" : "").Trim()))];

    /// <summary>The spans that are not as planned, by the section's index; null where one could not be read.</summary>
    public static IReadOnlyDictionary<int, Length>? Of(IReadOnlyList<MeasuredField> fields) =>
        fields.Any(field => field.Problem is not null) ? null
        : fields.Index().Where(field => field.Item.Clear is { } clear && clear != field.Item.Planned).ToDictionary(field => field.Index, field => field.Item.Clear!.Value);

    private static MeasuredField Read(HttpContext context, PieceSection section, string typed)
    {
        if (typed.Length == 0)
            return new(section, "", Clear: null, Problem: null);
        var read = PersonUnits.Read(context, typed);
        return !read.IsGood ? new(section, typed, Clear: null, T["NotALength", typed])
            : PieceSpans.IsLikely(section, read.Value) ? new(section, typed, read.Value, Problem: null)
            : new(section, typed, Clear: null, Unlikely(context, section, typed, read.Value));
    }

    /// <summary>A bare number that is nearer to the plan in the other unit is asked back in that; any other figure is held against the plan.</summary>
    private static string Unlikely(HttpContext context, PieceSection section, string typed, Length length)
    {
        var other = PersonUnits.UnitsOf(context) == Paper.Words.UnitsFirst.FeetInches ? "mm" : "in";
        return TypedLength.IsBare(typed) && LengthText.Parse($"{typed} {other}") is { IsGood: true } read && TimesOff(read.Value) < TimesOff(length)
            ? T["SpanBare", typed, Both(length), Both(read.Value)]
            : T["SpanUnlikely", typed, Both(length), Both(section.Clear)];

        string Both(Length shown) => Show.Both(context, shown);

        double TimesOff(Length span) => Math.Abs(Math.Log(Math.Max(span.Inches, 1e-9) / section.Clear.Inches));
    }
}
