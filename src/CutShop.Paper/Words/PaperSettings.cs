namespace CutShop.Paper.Words;

/// <summary>Which unit a figure leads with; the other always follows.</summary>
public enum UnitsFirst
{
    /// <summary>Feet and inches, then millimetres.</summary>
    FeetInches,

    /// <summary>Millimetres, then feet and inches.</summary>
    Millimetres,
}

/// <summary>A page in millimetres, upright.</summary>
/// <param name="Width">Width in millimetres.</param>
/// <param name="Height">Height in millimetres.</param>
public sealed record PageSize(double Width, double Height)
{
    /// <summary>Letter, 8 1/2 by 11 in.</summary>
    public static PageSize Letter { get; } = new(215.9, 279.4);

    /// <summary>A4, 210 by 297 mm.</summary>
    public static PageSize A4 { get; } = new(210, 297);
}

/// <summary>How paper is written.</summary>
/// <param name="Units">The unit that leads.</param>
/// <param name="Page">The page of tickets and summaries.</param>
/// <param name="Text">The words.</param>
public sealed record PaperSettings(UnitsFirst Units, PageSize Page, PaperText Text)
{
    /// <summary>Feet and inches first, on letter pages, in English.</summary>
    public static PaperSettings Default { get; } = new(UnitsFirst.FeetInches, PageSize.Letter, PaperText.English);

    /// <summary>True where what holds the rope must stand salt air, which paper then says.</summary>
    public bool IsForSalt { get; init; }

    /// <summary>Writes lengths as these settings want them.</summary>
    public Figures Figures => new(Units);
}
