namespace CutShop.Shop.Tests.Benches;

/// <summary>What the bench must do, as plainly as it can be said: no database, no plan, no coils.</summary>
internal sealed class ModelShop(IReadOnlyDictionary<PieceCode, Length> cuts)
{
    private const int StepsBeforeMeasuring = 2;
    private const int AllSteps = 4;

    public Dictionary<PieceCode, ModelTicket> Tickets { get; } = cuts.ToDictionary(pair => pair.Key, pair => new ModelTicket(pair.Value));

    public Length RopeInPieces => Tickets.Values.Aggregate(Length.Zero, (sum, ticket) => sum + (ticket.Measured ?? Length.Zero));

    public void Given(PieceCode code, string who)
    {
        var ticket = Tickets[code];
        if (Has(who) is { } mine)
            Assert.Equal(mine, code);
        else
            Assert.Equal("waiting", ticket.State);
        (ticket.State, ticket.Who) = ("at the bench", who);
    }

    public bool CanTake(PieceCode code, string who) => Tickets[code].State == "waiting" && Has(who) is null;

    public bool CanTick(PieceCode code, string who) => IsHis(code, who) && Tickets[code].Steps is var steps && steps != StepsBeforeMeasuring && steps < AllSteps;

    public void Tick(PieceCode code)
    {
        if (++Tickets[code].Steps == AllSteps)
            (Tickets[code].State, Tickets[code].Who) = ("cut", null);
    }

    public bool CanMeasure(PieceCode code, string who) => IsHis(code, who) && Tickets[code].Steps == StepsBeforeMeasuring;

    public void Measure(PieceCode code, Length measured)
    {
        var ticket = Tickets[code];
        (ticket.Measured, ticket.Steps, ticket.Longest) = (measured, StepsBeforeMeasuring + 1, ticket.Longest ?? measured);
    }

    public void TooLong(PieceCode code, Length measured)
    {
        Assert.True(measured > Tickets[code].Cut);
        Tickets[code].Longest = measured;
    }

    public bool CanUndoStep(PieceCode code, string who) => IsHis(code, who) && Tickets[code].Steps > 0;

    /// <summary>A step more is undone: the last tick, a measure, or a measure that was too long.</summary>
    public void UndoStep(PieceCode code)
    {
        var ticket = Tickets[code];
        if (ticket.Measured is not null)
            MeasureAgain(code, ticket.Who!);
        else if (ticket.Longest is not null)
            ticket.Longest = null;
        else
            ticket.Steps--;
    }

    public bool CanMeasureAgain(PieceCode code, string who) => IsCut(code) && (Tickets[code].State == "cut" ? Has(who) is null : IsHis(code, who));

    public void MeasureAgain(PieceCode code, string who)
    {
        var ticket = Tickets[code];
        (ticket.State, ticket.Who, ticket.Steps, ticket.Longest) = ("at the bench", who, StepsBeforeMeasuring, ticket.Longest > ticket.Measured ? ticket.Longest : null);
        ticket.Measured = null;
    }

    public void Refuse(PieceCode code, Length measured)
    {
        Assert.True(measured < Tickets[code].Cut);
        Reject(code);
    }

    public bool CanHandBack(PieceCode code) => Tickets[code].State == "at the bench" && Tickets[code].Steps < StepsBeforeMeasuring;

    public void Free(PieceCode code) => Reject(code);

    public bool CanTakeOver(PieceCode code, string who) => Tickets[code].State == "at the bench" && (Has(who) ?? code) == code;

    public bool IsCut(PieceCode code) => Tickets[code].State is "cut" or "at the bench" && Tickets[code].Measured is not null;

    public void Undo(PieceCode code) => Reject(code);

    public void Reject(PieceCode code) =>
        (Tickets[code].State, Tickets[code].Who, Tickets[code].Steps, Tickets[code].Measured, Tickets[code].Longest) = ("waiting", null, 0, null, null);

    /// <summary>The piece that a deed can most likely be done with, or null: one that is packed, one that is cut, or the person's own.</summary>
    public PieceCode? Likely(bool packed, bool cut, bool own, string who) =>
        packed ? First("packed") : cut ? First("cut") : own ? Has(who) : null;

    private PieceCode? First(string state) => Tickets.Where(pair => pair.Value.State == state).Select(pair => (PieceCode?)pair.Key).FirstOrDefault();

    private bool IsHis(PieceCode code, string who) => Tickets[code].State == "at the bench" && Tickets[code].Who == who;

    public PieceCode? Has(string who) => Tickets.Where(pair => pair.Value.Who == who).Select(pair => (PieceCode?)pair.Key).FirstOrDefault();
}

/// <summary>A ticket of the model.</summary>
internal sealed class ModelTicket(Length cut)
{
    public Length Cut => cut;

    public string State { get; set; } = "waiting";

    public int Steps { get; set; }

    public string? Who { get; set; }

    public Length? Measured { get; set; }

    public Length? Longest { get; set; }
}
