namespace CutShop.Paper.Drawings;

/// <summary>A font that paper needs is not on this machine. The message names it, where it was looked for and how to get it.</summary>
public sealed class FontMissingException(string face, IReadOnlyList<string> folders) : Exception(
    $"The font {face} was not found in {string.Join(", ", folders)}. Install the Debian package fonts-dejavu-core, "
    + $"or set {DejaVuFonts.FoldersVariable} to a folder that has {face}.")
{
    /// <summary>The face's file name.</summary>
    public string Face { get; } = face;
}
