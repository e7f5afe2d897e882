using CutShop.Paper.Drawings;
using CutShop.Paper.Words;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace CutShop.Paper.Sheets;

/// <summary>The pages of one sheet, filled from the top. Places and sizes are millimetres.</summary>
internal sealed class SheetPages
{
    private const double FootHeight = 6.5;
    private const double HeadSize = 3.4;
    private const double SubjectSize = 7;
    private const double FootSize = 2.8;

    private static readonly double[] LeftShares = [0.5, 0.55, 0.6];

    private readonly PdfDocument _document;
    private readonly Sheet _sheet;
    private readonly PaperSettings _settings;
    private readonly List<PdfPage> _pages = [];
    private XGraphics _graphics = null!;
    private double _top;
    private double _indent;
    private bool _isMeasuring;

    public SheetPages(PdfDocument document, Sheet sheet, PaperSettings settings)
    {
        (_document, _sheet, _settings) = (document, sheet, settings);
        Width = settings.Page.Width - 2 * PdfSheets.Margin;
        NewPage();
    }

    /// <summary>Width to write in.</summary>
    public double Width { get; private set; }

    /// <summary>True while one of two things beside each other is written.</summary>
    public bool IsBeside { get; private set; }

    /// <summary>Where the next thing goes.</summary>
    public double Y { get; private set; }

    /// <summary>Height left on this page.</summary>
    public double Left => _settings.Page.Height - PdfSheets.Margin - FootHeight - Y;

    /// <summary>Goes on to a new page where <paramref name="height"/> does not fit on this one.</summary>
    /// <returns>True where a page was begun.</returns>
    public bool Need(double height)
    {
        if (height <= Left || Y <= _top || _isMeasuring)
            return false;
        NewPage();
        return true;
    }

    /// <summary>Leaves room.</summary>
    public void Down(double height) => Y += height;

    /// <summary>Draws shapes whose places are given from the left edge of the text and the present height.</summary>
    public void Put(IReadOnlyList<Shape> shapes)
    {
        if (!_isMeasuring)
            PdfDrawing.Draw(_graphics, new Drawing("", "", Width, Left, shapes), PdfSheets.Margin + _indent, Y);
    }

    /// <summary>
    /// Writes two things beside each other, or one under the other where a page is too short for them. The left one gets half of the width or
    /// more, as both together come out lowest.
    /// </summary>
    public void SideBySide(Action left, Action right, double between)
    {
        var (width, height) = LeftShares.Select(share => (Width - between) * share)
            .Select(wide => (Width: wide, Height: Math.Max(Measured(left, wide), Measured(right, Width - between - wide))))
            .MinBy(beside => beside.Height);
        Need(height);
        if (height > Left)
        {
            left();
            right();
            return;
        }
        var top = Y;
        Within(0, width, left);
        Y = top;
        Within(width + between, Width - between - width, right);
        Y = top + height;
    }

    /// <summary>Writes the foot of every page, now that their number is known.</summary>
    public void Finish()
    {
        _graphics.Dispose();
        for (var i = 0; i < _pages.Count; i++)
        {
            using var graphics = XGraphics.FromPdfPage(_pages[i]);
            var y = _settings.Page.Height - PdfSheets.Margin;
            var number = _settings.Text["PageOf", i + 1, _pages.Count];
            var room = Width - Lettering.Width(number, FootSize) - 6;
            var (foot, size) = Lettering.Fit(_sheet.Foot, room, FootSize, FootSize * 0.8);
            PdfDrawing.Draw(
                graphics,
                new Drawing("", "", Width, FootHeight,
                [
                    new Stroke(new(0, -4), new(Width, -4), Pen.Thin),
                    new DrawnText(new(0, 0), foot, size),
                    new DrawnText(new(Width, 0), number, FootSize, TextAnchor.End),
                ]),
                PdfSheets.Margin,
                y);
        }
    }

    /// <summary>The height that something takes in a width, without writing it.</summary>
    private double Measured(Action write, double width)
    {
        var top = Y;
        _isMeasuring = true;
        Within(0, width, write);
        _isMeasuring = false;
        var height = Y - top;
        Y = top;
        return height;
    }

    private void Within(double indent, double width, Action write)
    {
        var whole = Width;
        (_indent, Width, IsBeside) = (indent, width, true);
        write();
        (_indent, Width, IsBeside) = (0, whole, false);
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
        if (_sheet.Stamp is not null)
            WriteStamp(_sheet.Stamp);
        _top = Y;
    }

    private void WriteHead()
    {
        const double BoxWidth = 32;
        const double BoxHeight = 8;
        const double Between = 3;
        var room = Width - _sheet.SignBoxes.Count * (BoxWidth + Between);
        var (subject, size) = Lettering.Fit(_sheet.Subject, room, SubjectSize, SubjectSize * 0.5, bold: true);
        Put(
        [
            new DrawnText(new(0, HeadSize), _sheet.Title, HeadSize),
            new DrawnText(new(0, HeadSize + 8), subject, size, Bold: true),
            new Stroke(new(0, 14), new(Width, 14), Pen.Ground),
        ]);
        foreach (var (i, label) in _sheet.SignBoxes.Index())
        {
            var x = room + Between + i * (BoxWidth + Between);
            Put([new DrawnText(new(x, FootSize), label, FootSize), new Box(x, FootSize + 1, BoxWidth, BoxHeight, Pen.Hidden, Fill.None)]);
        }
        Down(17);
    }

    private void WriteStamp(string stamp)
    {
        const double Height = 11;
        var (text, size) = Lettering.Fit(stamp, Width - 8, SubjectSize, SubjectSize * 0.5, bold: true);
        Put([new Box(0, 0, Width, Height, Pen.Ground, Fill.None), new DrawnText(new(Width / 2, Height / 2 + size * 0.36), text, size, TextAnchor.Middle, Bold: true)]);
        Down(Height + 3);
    }

    private void WriteRunningHead()
    {
        var (head, size) = Lettering.Fit($"{_sheet.Title}  {_sheet.Subject}  {_settings.Text["Continued"]}", Width, HeadSize, HeadSize * 0.7, bold: true);
        Put([new DrawnText(new(0, HeadSize), head, size, Bold: true), new Stroke(new(0, 5.5), new(Width, 5.5), Pen.Outline)]);
        Down(9);
    }
}
