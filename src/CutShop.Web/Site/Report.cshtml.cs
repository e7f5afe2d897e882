using CutShop.Shop.Maintenance;
using CutShop.Shop.Site;
using CutShop.Shop.Store;
using CutShop.Takeoff.Lengths;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Mvc;

using static CutShop.Web.Site.SiteWords;

namespace CutShop.Web.Site;

/// <summary>Reports a piece that does not fit, is damaged or missing.</summary>
[RequestSizeLimit(MostBytes)]
public sealed class ReportModel(PieceShelf pieces, SiteReports reports, SitePhotos photos, GuessLimits limits) : SiteForm
{
    // A photo that is somewhat too large is let in, so that the page can say so: a browser whose sending is cut short shows an error of its own.
    private const int MostBytes = 4 * SitePhotos.MostBytes;

    /// <summary>The piece.</summary>
    public SitePiece? Found { get; private set; }

    /// <summary>The form's own key: sent twice it counts once.</summary>
    public string Key { get; private set; } = FormKey.New();

    /// <summary>The kind that was chosen, or null.</summary>
    public string? Kind { get; private set; }

    /// <summary>The note as typed.</summary>
    public string Note { get; private set; } = "";

    /// <summary>Shows the form.</summary>
    public IActionResult OnGet()
    {
        Found = Find(pieces.Find, found => found.Label);
        return Found is { Label: LabelState.NoLongerWanted } ? Redirect($"/p/{Found.Code.Plain}/dropped") : Page();
    }

    /// <summary>
    /// Takes <c>kind</c>, one of the words of <see cref="SiteReportWords"/>, <c>note</c>, <c>photo</c>, a file that may be
    /// left out, one <c>span</c> a section where spans were measured, <c>key</c>, a GUID of the report's own, and <c>at</c>, the time of the tap in UTC.
    /// </summary>
    public async Task<IActionResult> OnPostAsync()
    {
        var cancel = HttpContext.RequestAborted;
        Found = Find(pieces.Find, found => found.Label);
        var (form, refusal) = await SentAsync(T["UnreadableWithPhoto", SitePhotos.MostMegabytes]);
        if (form is null)
            return refusal!;
        // Line ends count as the two characters that a browser sends or as the one that was typed: only one is kept.
        (Kind, Note) = (form["kind"], form["note"].ToString().Trim().ReplaceLineEndings("\n"));
        if (SpansIn(form, out var clear) is { } unread)
            return Refused(StatusCodes.Status422UnprocessableEntity, unread);
        if (ProblemWith(form) is { } problem)
            return Refused(StatusCodes.Status422UnprocessableEntity, problem);
        // Decided before a photo is unpacked for nothing.
        if (reports.Foresee(Code, Key) is { } known)
            return Answered(known);
        var sent = form.Files.GetFile("photo");
        using var turn = sent is null ? null : limits.Photo(HttpContext);
        if (turn is { IsAcquired: false })
            return ComeAgain(StatusCodes.Status429TooManyRequests, T["TooManyPhotos"], GuessLimits.SecondsToWait(turn));
        var read = await photos.ReadAsync(sent, cancel);
        using var photo = read.Photo;
        if (read is { Status: StatusCodes.Status503ServiceUnavailable, Problem: { } busy })
            return ComeAgain(read.Status, T[busy], SitePhotos.ComeAgainSeconds);
        if (read.Problem is { } wrong)
            return Refused(read.Status, T[wrong]);
        TryReadTime(form, out var at);
        return Answered(await SendAsync(new(SiteReportWords.Read(Kind)!.Value, Note, photo?.Name, at) { Clear = clear }, photo, cancel));
    }

    /// <summary>The photo is kept with its report; where the report cannot be stored, no photo is left.</summary>
    private async Task<SiteReportAnswer> SendAsync(NewSiteReport report, NewPhoto? photo, CancellationToken cancel)
    {
        try
        {
            return await reports.SendAsync(Code, report, OnSite, Key, () => photo?.Keep(), cancel);
        }
        catch (Exception e) when (photo is not null && StorageError.Of(e) is not { IsUnsure: true })
        {
            if (!reports.HasPhoto(photo.Name))
                photo.TakeBack();
            throw;
        }
    }

    private IActionResult Answered(SiteReportAnswer answer) => answer.Outcome == SiteOutcome.Done
        ? Stored(new { report = answer.Id, code = Code.Plain, kind = Kind }, "?reported=1")
        : Refused(answer.Outcome);

    /// <summary>The spans that came with the report, one field a section; null where none came.</summary>
    /// <returns>What is wrong with one of them, or null.</returns>
    private string? SpansIn(IFormCollection form, out IReadOnlyDictionary<int, Length>? clear)
    {
        clear = null;
        if (!form.ContainsKey("span") || Found?.Piece is not { } piece)
            return null;
        var fields = TypedSpans.Read(HttpContext, piece, form["span"]);
        clear = TypedSpans.Of(fields);
        return fields.FirstOrDefault(field => field.Problem is not null)?.Problem;
    }

    private string? ProblemWith(IFormCollection form)
    {
        if (KeyIn(form) is not { } key || !TryReadTime(form, out _))
            return T["ReportIncomplete"];
        Key = key;
        if (SiteReportWords.Read(Kind) is null)
            return T["ChooseKind"];
        return Note.Length > NewSiteReport.LongestNote ? T["NoteTooLong", Note.Length, NewSiteReport.LongestNote] : null;
    }
}
