namespace CutShop.Paper;

// The words of a cut plan's sheet.
public partial class PaperText
{
    /// <summary>What the sheet is.</summary>
    public virtual string CutPlanTitle => "Cut plan";

    /// <summary>The plan's state.</summary>
    public virtual string PlanState => "Plan is";

    /// <summary>What is proved of the plan.</summary>
    public virtual string PlanProof => "How good";

    /// <summary>How many pieces.</summary>
    public virtual string PlanPieces => "Pieces";

    /// <summary>Scrap in all.</summary>
    public virtual string PlanScrap => "Scrap";

    /// <summary>A coil's heading.</summary>
    public virtual string PlanCoil(string coil, string lot, string length) => lot.Length == 0 ? Say($"{coil}: {length}") : Say($"{coil}, lot {lot}: {length}");

    /// <summary>Over a coil's pieces.</summary>
    public virtual string PlanPiecesInOrder => "In cutting order; marks on the tape from the coil's free end";

    /// <summary>Columns of a coil's pieces.</summary>
    public virtual IReadOnlyList<string> PlanColumns => ["No.", "Piece", "Job and run", "Cut length", "From mark", "To mark"];

    /// <summary>Beside a piece that is no longer to be cut.</summary>
    public virtual string PlanPieceCancelled => "CANCELLED: do not cut";

    /// <summary>What is left goes to the rack.</summary>
    public virtual string PlanKeeps(string length) => Say($"Left for the rack: {length}.");

    /// <summary>What is left is scrap.</summary>
    public virtual string PlanScraps(string length) => Say($"Left as scrap: {length}.");

    /// <summary>Nothing is left.</summary>
    public virtual string PlanUsesUp => "Nothing is left.";

    /// <summary>In a bar, the part that goes to the rack.</summary>
    public virtual string Offcut => "offcut";

    /// <summary>Title of a coil's bar.</summary>
    public virtual string CoilBarTitle(string coil) => Say($"Coil {coil}");

    /// <summary>What a coil's bar shows, for someone who cannot see it.</summary>
    public virtual string CoilBarDescription(string coil, int pieces) => Say($"{pieces} pieces along {coil} to scale, in the order of the list below.");

    /// <summary>What a plan's picture shows, for someone who cannot see it.</summary>
    public virtual string PlanPictureDescription(int coils) => Say($"{coils} coils as bars, each with its pieces to scale in cutting order.");

    /// <summary>At the foot of each page.</summary>
    public virtual string PlanFoot(long number, string rope) => Say($"Cut plan {number}  ·  {rope}");
}
