namespace CutShop.Paper.Tests.Drawings;

public sealed class DejaVuFontsTests
{
    [Fact]
    public void A_missing_font_is_named_with_the_way_to_get_it()
    {
        var missing = Assert.Throws<FontMissingException>(() => new DejaVuFonts(["/nowhere", "/nor/here"]).GetFont("DejaVuSans.ttf"));
        Assert.Equal(
            "The font DejaVuSans.ttf was not found in /nowhere, /nor/here. Install the Debian package fonts-dejavu-core, or set CUTSHOP_FONTS to a folder that has DejaVuSans.ttf.",
            missing.Message);
        Assert.Equal("DejaVuSans.ttf", missing.Face);
    }

    [Fact]
    public void The_first_folder_that_has_the_font_is_taken()
    {
        var folder = Directory.CreateTempSubdirectory("cutshop-fonts-");
        try
        {
            File.WriteAllBytes(Path.Combine(folder.FullName, "DejaVuSans.ttf"), [1, 2, 3]);
            Assert.Equal([1, 2, 3], new DejaVuFonts(["/nowhere", folder.FullName, DejaVuFonts.UsualFolder]).GetFont("DejaVuSans.ttf"));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void Only_the_family_that_paper_uses_is_resolved()
    {
        var fonts = new DejaVuFonts(DejaVuFonts.UsualFolders);
        Assert.Equal("DejaVuSans-Bold.ttf", fonts.ResolveTypeface("DejaVu Sans", bold: true, italic: false)!.FaceName);
        Assert.Equal("DejaVuSans.ttf", fonts.ResolveTypeface("DejaVu Sans", bold: false, italic: false)!.FaceName);
        Assert.Null(fonts.ResolveTypeface("Another", bold: false, italic: false));
    }
}
