using System.Globalization;
using CutShop.Takeoff.Intake;
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

    /// <summary>How they stand: a <see cref="DraftLine.Course"/>.</summary>
    public string Course { get; init; } = "";

    /// <summary>The arc of posts on a curve. Its chord is <see cref="Width"/> between centres, where no angle is given.</summary>
    public DraftCurve Curve { get; init; } = new();

    /// <summary>Square or round.</summary>
    public string Shape { get; init; } = "square";

    /// <summary>Measured width or diameter.</summary>
    public string Across { get; init; } = "";

    /// <summary>The tape round a round post.</summary>
    public string Girth { get; init; } = "";

    /// <summary>Height of the posts above ground.</summary>
    public string PostHeight { get; init; } = "";

    /// <summary>Length of the posts below ground.</summary>
    public string Buried { get; init; } = "";

    /// <summary>Where heights on drill tickets are measured from.</summary>
    public string Datum { get; init; } = "";

    /// <summary>Who bores the posts.</summary>
    public string Boring { get; init; } = "";

    /// <summary>The diameter of the holes that are in the posts already, one for each row.</summary>
    public string Holes { get; init; } = "";

    /// <summary>Whether bores follow the slope.</summary>
    public string Bore { get; init; } = "";

    /// <summary>How the spacing was measured: clear or centres.</summary>
    public string Spacing { get; init; } = "clear";

    /// <summary>The spacing of the posts.</summary>
    public string Width { get; init; } = "";

    /// <summary>How far it is down beside the walk.</summary>
    public string Drop { get; init; } = "";

    /// <summary>Heights of the rows, parted by commas.</summary>
    public string Rows { get; init; } = "";

    /// <summary>Rope material.</summary>
    public string Material { get; init; } = "polypropylene";

    /// <summary>Rope diameter.</summary>
    public string Diameter { get; init; } = "";

    /// <summary>How the rope is laid or plaited, by the shop's own list.</summary>
    public string Construction { get; init; } = "";

    /// <summary>The rope's colour, by the shop's own list.</summary>
    public string Colour { get; init; } = "";

    /// <summary>The longest cut that a piece may have.</summary>
    public string Longest { get; init; } = "";

    /// <summary>What is done about the shrinking of natural rope.</summary>
    public DraftWetting Wetting { get; init; } = new();

    /// <summary>Sag at mid-span.</summary>
    public string Sag { get; init; } = "";

    /// <summary>What is done at both ends.</summary>
    public string Ends { get; init; } = "stopped";

    /// <summary>The eye at both ends, such as of a gate.</summary>
    public DraftEye Eye { get; init; } = new();

    /// <summary>What is done at the posts between.</summary>
    public string Between { get; init; } = "bored";

    /// <summary>The draft, or what is accepted as the number of posts: the one answer that must be known to lay the form out.</summary>
    public Parsed<DraftForm> ToForm()
    {
        var isRing = Course == DraftLine.Closed;
        var least = isRing ? 3 : 2;
        if (!int.TryParse(Posts.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var posts) || posts < least || posts > DraftForm.MostPosts)
            return Parsed.Bad<DraftForm>(OrderReplies.Of("AcceptedPosts", least, DraftForm.MostPosts));
        var isOnCurve = Course == DraftLine.OnCurve;
        var heights = Rows.Split([',', ';'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        DraftRow[] rows = [.. (heights.Length == 0 ? [""] : heights).Select((height, i) => Row(RowMark(i, heights.Length), height))];
        var post = new DraftPost
        {
            Shape = Shape,
            Across = Across,
            Girth = Girth,
            Height = PostHeight,
            Buried = Buried,
            Turn = isRing ? TurnOfRing(posts) : "",
            Holes = Holes.Trim().Length == 0 ? "" : MarkedText.Of(rows.Select(row => (row.Mark, Holes.Trim()))),
        };
        return Parsed.Good(new DraftForm
        {
            Number = Number,
            Customer = Customer,
            Due = Due,
            Unit = Unit,
            Datum = Datum,
            Bore = Bore,
            Boring = Boring,
            Longest = Longest,
            Rope = new() { Material = Material, Diameter = Diameter, Construction = Construction, Colour = Colour },
            Allowances = new() { Wetting = Wetting },
            Lines =
            [
                new()
                {
                    Mark = "A",
                    Course = Course,
                    Curve = !isOnCurve ? new() : Curve with { Chord = Curve.Angle.Trim().Length == 0 && Spacing == "centres" ? Width : "" },
                    Drop = Drop,
                    Posts = [.. Enumerable.Range(1, posts).Select(i => post with { Mark = string.Create(CultureInfo.InvariantCulture, $"A{i}") })],
                    Sections = [.. Enumerable.Repeat(new DraftSection { Spacing = Spacing, Width = Width }, isOnCurve ? 0 : isRing ? posts : posts - 1)],
                    Rows = rows,
                },
            ],
        });
    }

    private DraftRow Row(string mark, string height) => new()
    {
        Mark = mark,
        Height = height,
        Sag = Sag,
        Start = Ends,
        StartEye = Eye,
        Finish = Ends,
        FinishEye = Eye,
        Between = Between,
    };

    /// <summary>The turn at each post of a ring whose sides and corners are all alike: a whole turn shared out.</summary>
    private string TurnOfRing(int posts) =>
        string.Create(CultureInfo.InvariantCulture, $"{Math.Round(360m / posts, 6):0.######} {(Curve.Turns.Length == 0 ? "left" : Curve.Turns)}");

    private static string RowMark(int row, int rows) =>
        row == 0 ? "top" : row == rows - 1 ? "low" : string.Create(CultureInfo.InvariantCulture, $"row {row + 1}");
}
