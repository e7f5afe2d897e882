namespace CutShop.Paper;

/// <content>Words of a site pack on paper.</content>
public partial class PaperText
{
    /// <summary>What the sheets are together.</summary>
    public virtual string SitePack => "Site pack";

    /// <summary>Over the list of sheets.</summary>
    public virtual string Contents => "Contents";

    /// <summary>A label.</summary>
    public virtual string RowHeight => "Row height";

    /// <summary>Over the table of a piece's sections.</summary>
    public virtual string SagToSet => "Sag to set";

    /// <summary>Columns of the table of a piece's sections.</summary>
    public virtual IReadOnlyList<string> SagColumns => ["Between", "Sag to set", "Length of the string"];

    /// <summary>How sag is measured.</summary>
    public virtual string SagIsMeasuredSo => "Stretch a string where the rope meets the two posts. The sag is how far below it the rope hangs at the middle.";

    /// <summary>Over the steps of hanging a piece.</summary>
    public virtual string OrderOfWork => "Order of work";

    /// <summary>Over the list of a line's pieces.</summary>
    public virtual string PiecesInOrder => "Pieces, in the order to hang them";

    /// <summary>Columns of the list of a line's pieces.</summary>
    public virtual IReadOnlyList<string> LinePieceColumns => ["Run", "Code", "From, to", "Row height", "Cut length"];

    /// <summary>Over the list of a line's bores.</summary>
    public virtual string PostsToBore => "Posts, to bore on site";

    /// <summary>Columns of the list of a line's bores.</summary>
    public virtual IReadOnlyList<string> PostBoreColumns => ["Post", "Face", "Height above ground", "Bit", "Rake", "Depth", "Stop collar"];

    /// <summary>Title of the code that leads to a site pack.</summary>
    public virtual string SitePackCode => "For the site: scan this while there is a network";

    /// <summary>What the code that leads to a site pack is for.</summary>
    public virtual string SitePackCodeDescription(string address) => $"A square code that holds the address {address}.";

    /// <summary>Beside the code that leads to a site pack.</summary>
    public virtual IReadOnlyList<string> SitePackCodeLines =>
        ["Site pack", "Scan this while there is a network:", "the phone stores the pages of all", "pieces, and labels open without it."];
}
