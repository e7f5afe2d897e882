namespace CutShop.Paper;

public partial class PaperText
{
    /// <summary>What a kind of paper is called.</summary>
    public virtual string NameOf(PaperKind kind) => kind switch
    {
        PaperKind.Summary => "summary",
        PaperKind.CutTickets => "cut tickets",
        PaperKind.DrillTickets => "drill tickets",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, message: null),
    };

    /// <summary>The labels of a job.</summary>
    public virtual string Labels => "labels";
}
