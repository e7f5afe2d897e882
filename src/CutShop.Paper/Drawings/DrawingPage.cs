namespace CutShop.Paper.Drawings;

/// <summary>What a drawing is made for.</summary>
/// <param name="Width">Its width in millimetres.</param>
/// <param name="HasTitle">True where its title stands in it; else whoever shows it writes the title beside it.</param>
/// <param name="SmallestLetters">The smallest letters that can be read on it, in millimetres. What has no room for them is left to the text beside it.</param>
public sealed record DrawingPage(double Width, bool HasTitle, double SmallestLetters)
{
    /// <summary>A sheet of paper, on which everything is written, as small as can be drawn where there is no room.</summary>
    public static DrawingPage Paper { get; } = new(180, HasTitle: true, SmallestLetters: 0);

    /// <summary>
    /// A phone held upright. The drawing is shown as wide as the screen, so that 1 mm is about 5 of its pixels and the usual small letters
    /// stand as high as the text beside them; a long line is parted into more drawings.
    /// </summary>
    public static DrawingPage Phone { get; } = new(72, HasTitle: false, SmallestLetters: 2.4);
}
