namespace CutShop.Shop.Orders;

/// <summary>A stored draft.</summary>
/// <param name="Id">Its row.</param>
/// <param name="Version">Counts its changes.</param>
/// <param name="Form">What was typed.</param>
/// <param name="State">open, taken in or dropped.</param>
/// <param name="JobNumber">The job it became, or null.</param>
/// <param name="ChangedAt">When it was last changed, UTC.</param>
/// <param name="ChangedBy">Who changed it last.</param>
public sealed record Draft(long Id, long Version, DraftForm Form, string State, string? JobNumber, DateTimeOffset ChangedAt, string ChangedBy)
{
    /// <summary>True while it can be changed.</summary>
    public bool IsOpen => State == "open";
}

/// <summary>A line in the list of drafts.</summary>
/// <param name="Id">Its row.</param>
/// <param name="Number">The job's number as typed.</param>
/// <param name="Customer">The customer as typed.</param>
/// <param name="ChangedAt">When it was last changed, UTC.</param>
/// <param name="ChangedBy">Who changed it last.</param>
public sealed record DraftListed(long Id, string Number, string Customer, DateTimeOffset ChangedAt, string ChangedBy);

/// <summary>How keeping a draft went.</summary>
/// <param name="Draft">The draft as it is stored now.</param>
/// <param name="Conflict">What somebody else changed meanwhile, so that nothing was stored; or null.</param>
public sealed record DraftSaved(Draft Draft, DraftConflict? Conflict)
{
    /// <summary>True where what was sent is what is stored.</summary>
    public bool IsKept => Conflict is null && Draft.IsOpen;
}
