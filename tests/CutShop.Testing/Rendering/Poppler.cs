using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using SkiaSharp;

namespace CutShop.Testing.Rendering;

/// <summary>Reads PDFs with Debian's poppler-utils, as an eye and a reader would.</summary>
internal static class Poppler
{
    /// <summary>The first pages as pictures.</summary>
    public static IReadOnlyList<SKBitmap> Render(byte[] pdf, int dotsPerInch, int lastPage = 1) => WithFile(pdf, file =>
    {
        Run("pdftoppm", "-r", Text(dotsPerInch), "-l", Text(lastPage), "-png", file, Path.Combine(Path.GetDirectoryName(file)!, "page"));
        return Directory.GetFiles(Path.GetDirectoryName(file)!, "page*.png").Order(StringComparer.Ordinal).Select(SKBitmap.Decode).ToList();
    });

    /// <summary>All text of the PDF, no-break spaces as spaces, line by line as laid out.</summary>
    public static string TextOf(byte[] pdf) => WithFile(pdf, file => Run("pdftotext", "-layout", file, "-").Replace('\u00A0', ' '));

    /// <summary>All text of the PDF with every stretch of blanks and line breaks as one blank.</summary>
    public static string WordsOf(byte[] pdf) =>
        WithFile(pdf, file => string.Join(' ', Run("pdftotext", file, "-").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)));

    /// <summary>Page sizes in points, one a page.</summary>
    public static IReadOnlyList<(double Width, double Height)> PageSizes(byte[] pdf) => WithFile(pdf, file =>
        Run("pdfinfo", "-l", "100000", file).Split('\n')
            .Where(line => line.StartsWith("Page ", StringComparison.Ordinal) && line.Contains("size:", StringComparison.Ordinal))
            .Select(line => line[(line.IndexOf("size:", StringComparison.Ordinal) + 5)..].Split(' ', StringSplitOptions.RemoveEmptyEntries))
            .Select(parts => (double.Parse(parts[0], CultureInfo.InvariantCulture), double.Parse(parts[2], CultureInfo.InvariantCulture)))
            .ToList());

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static T WithFile<T>(byte[] pdf, Func<string, T> read)
    {
        var folder = Directory.CreateTempSubdirectory("cutshop-paper-");
        try
        {
            var file = Path.Combine(folder.FullName, "a.pdf");
            File.WriteAllBytes(file, pdf);
            return read(file);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static string Run(string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true, StandardOutputEncoding = Encoding.UTF8 };
        try
        {
            using var process = Process.Start(start)!;
            var errors = process.StandardError.ReadToEndAsync();
            var output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode == 0 ? output : throw new InvalidOperationException($"{program} failed: {errors.Result}");
        }
        catch (Win32Exception e)
        {
            throw new InvalidOperationException($"{program} is not on this machine; install the Debian package poppler-utils.", e);
        }
    }
}
