using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Shop.Benches;

/// <summary>A cut ticket as the bench sees it.</summary>
/// <param name="Id">The ticket.</param>
/// <param name="Code">The piece's code.</param>
/// <param name="Job">The job's number.</param>
/// <param name="Run">The run.</param>
/// <param name="Material">The rope's material by name.</param>
/// <param name="Diameter">The rope's nominal diameter.</param>
/// <param name="Cut">The length to cut.</param>
/// <param name="State">waiting, at the bench, cut or packed.</param>
/// <param name="Steps">Steps done.</param>
/// <param name="ClaimedBy">Who has it at the bench, or null.</param>
/// <param name="ClaimedAt">Since when, or null.</param>
/// <param name="Measured">The length measured after cutting, or null.</param>
/// <param name="Longest">The longest measure before it was trimmed, or null.</param>
/// <param name="CutBy">Who cut it, or null.</param>
/// <param name="CutAt">When it was cut, or null.</param>
/// <param name="Coil">The mark of its coil by the plan or of the coil it was cut from, or null before a plan.</param>
/// <param name="Lot">That coil's lot.</param>
/// <param name="HangsAt">Where that coil hangs.</param>
/// <param name="Most">The longest piece that its coil can give by the books, kerf, squaring and first trim taken off; null before a plan.</param>
/// <param name="IsCoilSeen">True once the coil at the bench was scanned and is the one of the plan.</param>
public sealed record CutWork(
    long Id,
    PieceCode Code,
    string Job,
    string Run,
    string Material,
    Length Diameter,
    Length Cut,
    string State,
    long Steps,
    string? ClaimedBy,
    DateTimeOffset? ClaimedAt,
    Length? Measured,
    Length? Longest,
    string? CutBy,
    DateTimeOffset? CutAt,
    string? Coil,
    string? Lot,
    string? HangsAt,
    Length? Most,
    bool IsCoilSeen) : IBenchTicket
{
    private const string Columns =
        """
        SELECT cut_tickets.id, code, jobs.number AS job, run, pieces.material, pieces.diameter_nm AS diameter, cut_nm AS cut,
          cut_tickets.state, steps, claimed_by, claimed_at, measured_nm AS measured, longest_nm AS longest, cut_by, cut_at,
          coils.mark AS coil, coils.lot, coils.place AS hangs_at,
          left_nm - kerf_nm - squaring_nm - CASE WHEN trimmed = 1 THEN 0 ELSE first_trim_nm END AS most,
          coil_seen_at IS NOT NULL AS is_coil_seen
        FROM cut_tickets JOIN pieces ON pieces.id = cut_tickets.piece_id JOIN jobs ON jobs.id = job_id
        LEFT JOIN plan_coils ON plan_coils.id = cut_tickets.plan_coil_id LEFT JOIN cut_plans ON cut_plans.id = plan_id
        LEFT JOIN coils ON coils.id = plan_coils.coil_id
        """;

    /// <summary>The step to do now; null where none is left or nobody has the ticket.</summary>
    public CutStep? Next => State == TicketStates.AtTheBench && Steps < (int)CutStep.LabelAndTie ? (CutStep)((int)Steps + 1) : null;

    /// <summary>The step that was done last and can be undone; a length that was too long is one of measuring. Null where none is.</summary>
    public CutStep? LastDone => State != TicketStates.AtTheBench || Steps == 0 ? null : Longest is not null ? CutStep.Measure : (CutStep)(int)Steps;

    /// <summary>True where it is cut, measured, labelled and tied.</summary>
    public bool IsFinished => State is TicketStates.Cut or TicketStates.Packed;

    /// <summary>True where somebody has it at the bench.</summary>
    /// <param name="who">That person.</param>
    public bool IsOf(string who) => State == TicketStates.AtTheBench && ClaimedBy == who;

    internal static CutWork? Find(ShopSession session, PieceCode code) =>
        session.FirstOrDefault<CutWork>(Columns + " WHERE code = @code", new { code });

    internal static CutWork Of(ShopSession session, long id) =>
        session.FirstOrDefault<CutWork>(Columns + " WHERE cut_tickets.id = @id", new { id })!;

    internal static IReadOnlyList<CutWork> AtTheBench(ShopSession session) =>
        session.All<CutWork>(Columns + $" WHERE cut_tickets.state = '{TicketStates.AtTheBench}' ORDER BY claimed_at");

    internal static IReadOnlyList<CutWork> Latest(ShopSession session, int most) =>
        session.All<CutWork>(Columns + $" WHERE cut_at IS NOT NULL AND cut_tickets.state IN ({TicketStates.CutOrPacked}) ORDER BY cut_at DESC LIMIT @most", new { most });
}
