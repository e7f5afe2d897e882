namespace CutShop.Paper.Words;

/// <summary>The papers of a job.</summary>
public enum PaperKind
{
    /// <summary>The summary with plan and elevations.</summary>
    Summary,

    /// <summary>A cut ticket for each piece.</summary>
    CutTickets,

    /// <summary>A drill ticket for each bored post.</summary>
    DrillTickets,
}
