using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Shop.Stock;

/// <summary>A piece that is yet to come off a coil, by the accepted plan.</summary>
/// <param name="Plan">The plan's number.</param>
/// <param name="Job">The job's number.</param>
/// <param name="Run">The piece's run.</param>
/// <param name="Code">The piece's code.</param>
/// <param name="Due">The job's day, or null.</param>
/// <param name="Cut">The length to cut.</param>
/// <param name="State">waiting, or at the bench.</param>
public sealed record PlannedCut(long Plan, string Job, string Run, PieceCode Code, DateOnly? Due, Length Cut, string State);

/// <summary>What is yet to be cut from the coils, by the accepted plans.</summary>
public sealed class PlannedCuts(ShopDatabase database)
{
    /// <summary>What is yet to be cut: the tickets that wait or are at the bench and have a place on a coil, nothing measured.</summary>
    private const string Tickets =
        $"""
        FROM plan_coils
        JOIN cut_tickets ON cut_tickets.plan_coil_id = plan_coils.id AND cut_tickets.state IN ({TicketStates.ToDo}) AND measured_nm IS NULL
        JOIN pieces ON pieces.id = piece_id
        """;

    /// <summary>The pieces of one coil, in cutting order.</summary>
    public IReadOnlyList<PlannedCut> Of(string mark) => database.Read(session => session.All<PlannedCut>(
        $"""
        SELECT plan_id AS plan, number AS job, run, code, due, cut_nm AS cut, cut_tickets.state
        {Tickets} JOIN jobs ON jobs.id = job_id JOIN coils ON coils.id = coil_id
        WHERE coils.mark = @mark ORDER BY plan_id, queue_place
        """,
        new { mark }));

    /// <summary>The rope of those pieces, by the coil's id; a coil without any is not there. Kerf and trims come on top.</summary>
    public IReadOnlyDictionary<long, Length> ByCoil() => database.Read(session => session.All<(long Coil, Length Rope)>(
        $"SELECT coil_id AS coil, CAST(sum(cut_nm) AS bigint) AS rope {Tickets} WHERE coil_id IS NOT NULL GROUP BY coil_id").ToDictionary(coil => coil.Coil, coil => coil.Rope));
}
