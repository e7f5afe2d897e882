using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Rules;
using CutShop.Takeoff.Tables;

namespace CutShop.Shop.Site;

/// <summary>Stores the spans that installers measure, the last of each section of a piece. The label's code is all that it asks for.</summary>
public sealed class MeasuredSpans(ShopDatabase database)
{
    /// <summary>Keeps what was measured of a piece in place of what was measured before. Safe to send twice.</summary>
    /// <param name="code">The label's code.</param>
    /// <param name="clear">The level distance from post face to post face by the section's index in the piece, each likely; a section that is left out is as planned.</param>
    /// <param name="at">When it was measured, UTC; null stands for now.</param>
    /// <param name="who">Who measured, for the history.</param>
    /// <param name="requestKey">The request's own key.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<SiteOutcome> KeepAsync(
        PieceCode code, IReadOnlyDictionary<int, Length> clear, DateTimeOffset? at, string who, string requestKey, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(clear);
        return database.WriteAsync(
            session => RequestLog.Once(
                session,
                $"measured {code.Plain} {requestKey}",
                () => Keep(session, code, clear, at, who),
                outcome => outcome == SiteOutcome.Done ? "kept" : null,
                _ => SiteOutcome.Done),
            cancel);
    }

    /// <summary>What a piece is like on site, or null where nothing was measured of it.</summary>
    public AsBuilt? Find(PieceCode code) => database.Read(session =>
    {
        if (session.FirstOrDefault<PieceRow>("SELECT id, job_id FROM pieces WHERE code = @code", new { code }) is not { } row || Of(session, row.Id) is not { Count: > 0 } clear)
            return null;
        var work = StoredParts.Piece(session, row.Id)!;
        return new AsBuilt(work.Piece, clear, Piece(session, row.JobId, work.Piece, clear).Cut);
    });

    /// <summary>What was measured last of a piece, by section.</summary>
    internal static IReadOnlyDictionary<int, Length> Of(ShopSession session, long pieceId) =>
        session.All<SpanRow>("SELECT section, clear_nm AS clear FROM measured_spans WHERE piece_id = @pieceId", new { pieceId })
            .ToDictionary(row => (int)row.Section, row => row.Clear);

    /// <summary>A piece as it is cut for what was measured: by the takeoff's own rules.</summary>
    internal static Piece Piece(ShopSession session, long jobId, Piece planned, IReadOnlyDictionary<int, Length> clear)
    {
        var job = StoredParts.Frame(session, jobId).ToTakeoff(new("", "", Due: null, OneLot: false), [], []).Job;
        // Of the tables only the ropes' weights count here, and those come with the program.
        return AsMeasured.Of(job, planned, clear, ShopTables.Standard);
    }

    /// <summary>Stores what was measured of a piece; what was measured later stays.</summary>
    internal static SiteOutcome Put(ShopSession session, long pieceId, IReadOnlyDictionary<int, Length> clear, DateTimeOffset at, string who)
    {
        var sections = StoredParts.Piece(session, pieceId)!.Piece.Sections;
        if (clear.Any(span => span.Key < 0 || span.Key >= sections.Count || !PieceSpans.IsLikely(sections[span.Key], span.Value)))
            return SiteOutcome.UnlikelySpan;
        if (session.Value<bool>("SELECT EXISTS (SELECT 1 FROM measured_spans WHERE piece_id = @pieceId AND tapped_at > @at)", new { pieceId, at }))
            return SiteOutcome.Done;
        var before = Of(session, pieceId);
        session.Execute("DELETE FROM measured_spans WHERE piece_id = @pieceId", new { pieceId });
        foreach (var (section, span) in clear.Where(span => span.Value != sections[span.Key].Clear))
            session.Execute("INSERT INTO measured_spans (piece_id, section, clear_nm, tapped_at) VALUES (@pieceId, @section, @span, @at)", new { pieceId, section, span, at });
        for (var i = 0; i < sections.Count; i++)
        {
            var (was, now) = (before.GetValueOrDefault(i, sections[i].Clear), clear.GetValueOrDefault(i, sections[i].Clear));
            if (was != now)
                session.Record("piece", pieceId, who, HistoryCodes.SpanMeasured, beforeLength: was, afterLength: now, details: new { section = i + 1 });
        }
        return SiteOutcome.Done;
    }

    private static SiteOutcome Keep(ShopSession session, PieceCode code, IReadOnlyDictionary<int, Length> clear, DateTimeOffset? at, string who)
    {
        var label = LabelRow.Find(session, code);
        return LabelRow.OutcomeOf(label) is not SiteOutcome.Done and var refused
            ? refused
            : Put(session, label!.PieceId, clear, session.NoLaterThanNow(at), who);
    }

    private sealed record PieceRow(long Id, long JobId);

    private sealed record SpanRow(long Section, Length Clear);
}

/// <summary>A piece as it was planned and what was measured of it on site.</summary>
/// <param name="Piece">The piece as planned.</param>
/// <param name="Clear">The spans measured, by the section's index.</param>
/// <param name="Cut">The length that it would be cut to for them.</param>
public sealed record AsBuilt(Piece Piece, IReadOnlyDictionary<int, Length> Clear, Length Cut);
