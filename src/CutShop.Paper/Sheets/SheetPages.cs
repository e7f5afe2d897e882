using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace CutShop.Paper;

/// <summary>The pages of one sheet, filled from the top. Places and sizes are millimetres.</summary>
internal sealed class SheetPages
{
    private const double FootHeight = 8;
    private const double HeadSize = 3.4;
    private const double SubjectSize = 7;
    private const double FootSize = 2.8;

    private readonly PdfDocument _document;
    private readonly Sheet _sheet;
    private readonly PaperSettings _settings;
    private readonly List<PdfPage> _pages = [];
    private XGraphics _graphics = null!;
    private double _top;

    public SheetPages(PdfDocument document, Sheet sheet, PaperSettings settings)
    {
        (_document, _sheet, _settings) = (document, sheet, settings);
        NewPage();
    }

    /// <summary>Width to write in.</summary>
    public double Width => _settings.Page.Width - 2 * PdfSheets.Margin;

    /// <summary>Where the next thing goes.</summary>
    public double Y { get; private set; }

    /// <summary>Height left on this page.</summary>
    public double Left => _settings.Page.Height - PdfSheets.Margin - FootHeight - Y;

    /// <summary>Goes on to a new page where <paramref name="height"/> does not fit on this one.</summary>
    /// <returns>True where a page was begun.</returns>
    public bool Need(double height)
    {
        if (height <= Left || Y <= _top)
            return false;
        NewPage();
        return true;
    }

    /// <summary>Leaves room.</summary>
    public void Down(double height) => Y += height;

    /// <summary>Draws shapes whose places are given from the left edge of the text and the present height.</summary>
    public void Put(IReadOnlyList<Shape> shapes) =>
        PdfDrawing.Draw(_graphics, new Drawing("", "", Width, Left, shapes), PdfSheets.Margin, Y);

    /// <summary>Writes the foot of every page, now that their number is known.</summary>
    public void Finish()
    {
        _graphics.Dispose();
        for (var i = 0; i < _pages.Count; i++)
        {
            using var graphics = XGraphics.FromPdfPage(_pages[i]);
            var y = _settings.Page.Height - PdfSheets.Margin;
            var number = _settings.Text.PageOf(i + 1, _pages.Count);
            var room = Width - Lettering.Width(number, FootSize) - 6;
            var (foot, size) = Lettering.Fit(_sheet.Foot, room, FootSize, FootSize * 0.8);
            PdfDrawing.Draw(
                graphics,
                new Drawing("", "", Width, FootHeight,
                [
                    new Stroke(new(0, -4), new(Width, -4), Pen.Thin),
                    new Words(new(0, 0), foot, size),
                    new Words(new(Width, 0), number, FootSize, TextAnchor.End),
                ]),
                PdfSheets.Margin,
                y);
        }
    }

    private void NewPage()
    {
        _graphics?.Dispose();
        var page = _document.AddPage();
        page.Width = XUnit.FromMillimeter(_settings.Page.Width);
        page.Height = XUnit.FromMillimeter(_settings.Page.Height);
        _pages.Add(page);
        _graphics = XGraphics.FromPdfPage(page);
        Y = PdfSheets.Margin;
        if (_pages.Count == 1)
            WriteHead();
        else
            WriteRunningHead();
        _top = Y;
    }

    private void WriteHead()
    {
        var (subject, size) = Lettering.Fit(_sheet.Subject, Width, SubjectSize, SubjectSize * 0.5, bold: true);
        Put(
        [
            new Words(new(0, HeadSize), _sheet.Title, HeadSize),
            new Words(new(0, HeadSize + 8), subject, size, Bold: true),
            new Stroke(new(0, 14), new(Width, 14), Pen.Ground),
        ]);
        Down(17);
    }

    private void WriteRunningHead()
    {
        var (head, size) = Lettering.Fit($"{_sheet.Title}  {_sheet.Subject}  {_settings.Text.Continued}", Width, HeadSize, HeadSize * 0.7, bold: true);
        Put([new Words(new(0, HeadSize), head, size, Bold: true), new Stroke(new(0, 5.5), new(Width, 5.5), Pen.Outline)]);
        Down(9);
    }
}
