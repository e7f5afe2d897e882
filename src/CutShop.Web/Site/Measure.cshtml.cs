using CutShop.Shop.Site;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Rules;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.OutputCaching;

using static CutShop.Web.Site.SiteWords;

namespace CutShop.Web.Site;

/// <summary>Compares a piece with spans that are measured on site, stores them, and says what can be done.</summary>
[OutputCache(PolicyName = CachedSitePages.Policy)]
[RequestSizeLimit(MostBytes)]
public sealed class MeasureModel(PieceShelf pieces, MeasuredSpans spans) : SiteForm
{
    private const int MostBytes = 64 * 1024;

    private PieceSpans? _spans;

    /// <summary>The piece.</summary>
    public SitePiece? Found { get; private set; }

    /// <summary>Each section with what is typed or was measured for it.</summary>
    public IReadOnlyList<MeasuredField> Sections { get; private set; } = [];

    /// <summary>What can be done with the spans as measured; null where nothing was measured.</summary>
    public SpanAdvice? Advice { get; private set; }

    /// <summary>The advice for the spans that the sections can have, for a phone without a network.</summary>
    public SpanTables Tables { get; private set; } = new([], LeastShared: 0, Rope: 0);

    /// <summary>What the knots at the ends can give.</summary>
    public Length KnotsGive => _spans!.KnotsGive;

    /// <summary>The ways out, each with its figures, the best first.</summary>
    public IReadOnlyList<string> Ways => Advice is not { } advice || advice.Sections.All(section => section.Over == Length.Zero)
        ? []
        : [.. WaysOf(advice)];

    /// <summary>What comes of a section's span; null where none was measured.</summary>
    public SectionAdvice? AdviceOf(int index) => Advice?.Sections.FirstOrDefault(section => section.Index == index);

    /// <summary>The posts of a section.</summary>
    public string NameOf(int index) => $"{Sections[index].Section.From.Mark} – {Sections[index].Section.To.Mark}";

    /// <summary>Shows the form with what was measured last, and what comes of it.</summary>
    public IActionResult OnGet()
    {
        Found = Find(pieces.Find, found => found.Label);
        if (Found is not { Piece: { } piece })
            return Found is null ? Page() : Redirect($"/p/{Found.Code.Plain}/dropped");
        Sections = [.. piece.Sections.Select((section, i) => new MeasuredField(
            section, Found.Measured.TryGetValue(i, out var clear) ? LengthText.Exact(clear) : "", Clear: null, Problem: null))];
        Prepare(Found.Measured);
        return Page();
    }

    /// <summary>
    /// Takes one <c>span</c> a section, in order; an empty one is as planned. <c>key</c> is a GUID of the tap's own, and <c>at</c> the time of
    /// the tap in UTC.
    /// </summary>
    public async Task<IActionResult> OnPostAsync()
    {
        var cancel = HttpContext.RequestAborted;
        Found = Find(pieces.Find, found => found.Label);
        if (Lost is { } lost)
            return Refused(lost.Status, lost.Problem);
        if (Found is not { Piece: { } piece })
            return WantsJson ? Refused(SiteOutcome.NoLongerWanted) : Redirect($"/p/{Code.Plain}/dropped");
        Sections = TypedSpans.Read(HttpContext, piece, default);
        Prepare(new Dictionary<int, Length>());
        if (await ReadFormAsync(cancel) is not { } form)
            return Refused(StatusCodes.Status413PayloadTooLarge, T["Unreadable"]);
        Sections = TypedSpans.Read(HttpContext, piece, form["span"]);
        if (KeyIn(form) is not { } key || !TryReadTime(form, out var at))
            return Refused(StatusCodes.Status422UnprocessableEntity, T["TapIncomplete"]);
        if (TypedSpans.Of(Sections) is not { } clear)
            return Refused(StatusCodes.Status422UnprocessableEntity, Sections.First(section => section.Problem is not null).Problem!);
        var outcome = await spans.KeepAsync(Code, clear, at, OnSite, key, cancel);
        return outcome == SiteOutcome.Done ? Stored(new { code = Code.Plain, spans = clear.Count }, "/measure#advice") : Refused(outcome);
    }

    private void Prepare(IReadOnlyDictionary<int, Length> clear)
    {
        _spans = new PieceSpans(Found!.Takeoff!, Found.Piece!);
        Tables = _spans.Tables();
        Advice = clear.Count == 0 ? null : _spans.Of(clear);
    }

    private IEnumerable<string> WaysOf(SpanAdvice advice)
    {
        if (advice.IsEachSound)
            yield return T["WayOfSag", string.Join("; ", advice.Sections.Select(section => $"{NameOf(section.Index)}: {Both(section.Sag)}"))];
        if (advice.Shared is { } shared)
            yield return T["ShareOut", Both(shared)];
        if (advice.FromKnot is { } tail)
            yield return T["KnotsTail", Both(tail)];
        if (advice.Over.IsPositive)
            yield return T["TrimOff", Both(advice.Over)];
        if (advice.IsShort)
            yield return T["SendBack"];
    }
}
