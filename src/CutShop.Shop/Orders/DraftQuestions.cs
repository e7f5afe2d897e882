using System.Globalization;
using CutShop.Takeoff.Lengths;

namespace CutShop.Shop.Orders;

/// <summary>The few questions that a draft starts from, each answered as typed. All posts are alike at first.</summary>
public sealed record DraftQuestions
{
    /// <summary>The job's number.</summary>
    public string Number { get; init; } = "";

    /// <summary>Who orders.</summary>
    public string Customer { get; init; } = "";

    /// <summary>The day it is due.</summary>
    public string Due { get; init; } = "";

    /// <summary>The unit of numbers typed without one.</summary>
    public string Unit { get; init; } = "in";

    /// <summary>How many posts.</summary>
    public string Posts { get; init; } = "";

    /// <summary>Square or round.</summary>
    public string Shape { get; init; } = "square";

    /// <summary>Measured width or diameter.</summary>
    public string Across { get; init; } = "";

    /// <summary>Height of the posts above ground.</summary>
    public string PostHeight { get; init; } = "";

    /// <summary>How the spacing was measured: clear or centres.</summary>
    public string Spacing { get; init; } = "clear";

    /// <summary>The spacing of the posts.</summary>
    public string Width { get; init; } = "";

    /// <summary>Heights of the rows, parted by commas.</summary>
    public string Rows { get; init; } = "";

    /// <summary>Rope material.</summary>
    public string Material { get; init; } = "polypropylene";

    /// <summary>Rope diameter.</summary>
    public string Diameter { get; init; } = "";

    /// <summary>Sag at mid-span.</summary>
    public string Sag { get; init; } = "";

    /// <summary>What is done at both ends.</summary>
    public string Ends { get; init; } = "stopped";

    /// <summary>What is done at the posts between.</summary>
    public string Between { get; init; } = "bored";

    /// <summary>The draft, or what is accepted as the number of posts: the one answer that must be known to lay the form out.</summary>
    public Parsed<DraftForm> ToForm()
    {
        if (!int.TryParse(Posts.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var posts) || posts is < 2 or > DraftForm.MostPosts)
            return Parsed.Bad<DraftForm>(OrderReplies.Of("AcceptedPosts", DraftForm.MostPosts));
        var post = new DraftPost { Shape = Shape, Across = Across, Height = PostHeight };
        var section = new DraftSection { Spacing = Spacing, Width = Width };
        var heights = Rows.Split([',', ';'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        return Parsed.Good(new DraftForm
        {
            Number = Number,
            Customer = Customer,
            Due = Due,
            Unit = Unit,
            Rope = new() { Material = Material, Diameter = Diameter },
            Lines =
            [
                new()
                {
                    Mark = "A",
                    Posts = [.. Enumerable.Range(1, posts).Select(i => post with { Mark = string.Create(CultureInfo.InvariantCulture, $"A{i}") })],
                    Sections = [.. Enumerable.Repeat(section, posts - 1)],
                    Rows = [.. (heights.Length == 0 ? [""] : heights).Select((height, i) => new DraftRow
                    {
                        Mark = RowMark(i, heights.Length),
                        Height = height,
                        Sag = Sag,
                        Start = Ends,
                        Finish = Ends,
                        Between = Between,
                    })],
                },
            ],
        });
    }

    private static string RowMark(int row, int rows) =>
        row == 0 ? "top" : row == rows - 1 ? "low" : string.Create(CultureInfo.InvariantCulture, $"row {row + 1}");
}
