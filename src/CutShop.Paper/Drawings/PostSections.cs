namespace CutShop.Paper;

/// <summary>Draws a post cut through its bores: from above, and from the side where a bore is raked. The line arrives from the left.</summary>
internal static class PostSections
{
    private const double Cell = Elevation.PaperWidth / 2;
    private const double WidestPost = 30;
    private const double CellHeight = 79;
    private const double SmallSize = 2.7;

    public static Drawing Draw(PostWork work, IReadOnlyList<PostCell> cells, PaperSettings settings)
    {
        var text = settings.Text;
        var scale = DrawingScale.Fitting(work.Post.Across.Inches, WidestPost);
        var title = text.SectionsTitle(work.Post.Mark, scale.OneTo);
        var shapes = new List<Shape> { new Words(new(0, 5), title, 3.4, Bold: true) };
        for (var i = 0; i < cells.Count; i++)
        {
            var centre = new Point((i + 0.5) * Cell, 42);
            if (cells[i].FromSide)
                SectionFromSide.Draw(shapes, work, cells[i].Bores[0], centre, scale, settings);
            else
                SectionFromAbove.Draw(shapes, work, cells[i].Bores, centre, scale, settings);
            var row = cells[i].Rows.Length <= 16 ? cells[i].Rows : cells[i].Rows[..15] + "…";
            shapes.Add(new Words(new(centre.X, 11), cells[i].FromSide ? text.FromSide(row) : text.FromAbove(row), 3, TextAnchor.Middle, Bold: true));
        }
        var rows = string.Join(", ", cells.Select(cell => cell.Rows).Distinct());
        return new(title, text.SectionsDescription(rows), Elevation.PaperWidth, CellHeight, shapes);
    }

    /// <summary>The lines under a section, one below the other.</summary>
    public static void Caption(List<Shape> shapes, Point centre, IEnumerable<string> lines)
    {
        var y = centre.Y + 30;
        foreach (var line in lines)
        {
            shapes.Add(new Words(new(centre.X, y), line, SmallSize, TextAnchor.Middle));
            y += 3.8;
        }
    }
}
