using System.Globalization;
using CutShop.Testing.Rendering;

namespace CutShop.Benchmarks.Labels;

/// <summary>How many of so many pictures of a label an independent reader reads, at each level of correction, for a short and a long address.</summary>
internal static class LabelsBenchmark
{
    private const int DotsPerInch = 406;
    private const int UsualPictures = 100;
    private const double LeastOfSmeared = 0.8;

    private static readonly QrCorrection[] Levels = [QrCorrection.Fourteenth, QrCorrection.Seventh, QrCorrection.Quarter, QrCorrection.Third];

    private static readonly string[] Bases = ["https://shop.example", "https://orders.some-rope-railing-shop.example"];

    private static readonly (string Name, PhotoOf Seen)[] Pictures =
    [
        ("fresh", PhotoOf.FreshLabel),
        ("blur", PhotoOf.Blurred),
        ("tilt", PhotoOf.Tilted),
        ("smear 5 %", PhotoOf.Smeared with { Smear = 0.05 }),
        ("smear 10 %", PhotoOf.Smeared),
        ("smear 15 %", PhotoOf.Smeared with { Smear = 0.15 }),
        ("all, 10 %", PhotoOf.Everything),
    ];

    /// <summary>Prints the table, and says whether the level that labels are printed with stands what it must: every blurred or tilted picture, and most that are smeared.</summary>
    public static int Run(string[] args)
    {
        var count = args is ["--pictures", var text] ? int.Parse(text, CultureInfo.InvariantCulture) : UsualPictures;
        Console.WriteLine($"Pictures read of {count}, label 4 x 2 in at 203 dots to the inch.");
        Console.WriteLine();
        Console.WriteLine($"| address | level | modules | module | {string.Join(" | ", Pictures.Select(picture => picture.Name))} |");
        Console.WriteLine($"|---|---|---:|---:|{string.Concat(Pictures.Select(_ => "---:|"))}");
        var isMet = true;
        foreach (var address in Bases)
        {
            foreach (var level in Levels)
            {
                var read = Line(address, level, count);
                isMet &= level != LabelStock.Default.Correction || (read["blur"] + read["tilt"] == 2 * count && read["smear 10 %"] >= LeastOfSmeared * count);
            }
        }
        Console.WriteLine();
        Console.WriteLine($"Labels are printed with level {Letter(LabelStock.Default.Correction)}: every blurred or tilted picture read, and of those with a 10 % smear at least {LeastOfSmeared:0 %}: {(isMet ? "met" : "NOT met")}");
        return isMet ? 0 : 1;
    }

    private static Dictionary<string, int> Line(string baseAddress, QrCorrection level, int count)
    {
        var stock = LabelStock.Default with { Correction = level };
        var takeoff = DemoJob.Takeoff();
        var label = PieceLabel.Of(baseAddress, takeoff.Job, takeoff.Pieces[0], PieceCode.Parse("3333-3333-3332").OrThrow()).OrThrow();
        using var page = Poppler.Render(LabelPdf.Write("label", [label], stock, PaperSettings.Default).OrThrow(), DotsPerInch)[0];
        var code = CodeSquare.On(label.Address, stock, DotsPerInch);
        var read = Pictures.ToDictionary(picture => picture.Name, picture => Enumerable.Range(1, count).Count(seed =>
            LabelPhoto.IsRead(page, code, picture.Seen, seed, label.Address)));
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"| {label.Address.Length} characters | {Letter(level)} | {code.Side} | {code.Module / DotsPerInch * 25.4:0.00} mm | {string.Join(" | ", Pictures.Select(picture => read[picture.Name]))} |"));
        return read;
    }

    private static char Letter(QrCorrection level) => "LMQH"[(int)level];
}
