using PdfSharp.Fonts;

namespace CutShop.Paper.Drawings;

/// <summary>Finds the two faces that CutShop prints with, DejaVu Sans and its bold, in a list of folders.</summary>
/// <param name="folders">Folders to look in, first match first.</param>
public sealed class DejaVuFonts(IReadOnlyList<string> folders) : IFontResolver
{
    /// <summary>The family's name.</summary>
    public const string Family = "DejaVu Sans";

    /// <summary>The environment variable that names more folders, parted like a search path; they are looked in first.</summary>
    public const string FoldersVariable = "CUTSHOP_FONTS";

    /// <summary>Where Debian's fonts-dejavu-core puts them.</summary>
    public const string UsualFolder = "/usr/share/fonts/truetype/dejavu";

    /// <summary>The folders of the environment variable, then the usual one.</summary>
    public static IReadOnlyList<string> UsualFolders =>
    [
        .. (Environment.GetEnvironmentVariable(FoldersVariable) ?? "")
            .Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries),
        UsualFolder,
    ];

    /// <inheritdoc/>
    public FontResolverInfo? ResolveTypeface(string familyName, bool bold, bool italic) =>
        familyName == Family ? new FontResolverInfo(bold ? "DejaVuSans-Bold.ttf" : "DejaVuSans.ttf") : null;

    /// <inheritdoc/>
    /// <exception cref="FontMissingException">The face is in none of the folders.</exception>
    public byte[]? GetFont(string faceName)
    {
        var path = folders.Select(folder => Path.Combine(folder, faceName)).FirstOrDefault(File.Exists);
        return path is null ? throw new FontMissingException(faceName, folders) : File.ReadAllBytes(path);
    }
}
