namespace CutShop.Shop.Tests.Orders;

public sealed class QuestionMistakesTests
{
    private static readonly DraftQuestions Good = new()
    {
        Number = "LQ-3001",
        Customer = "Lantern Quay",
        Posts = "40",
        Across = "5 1/2",
        PostHeight = "42",
        Width = "6'",
        Rows = "36, 18",
        Diameter = "1 1/2",
        Sag = "6",
    };

    public static TheoryData<DraftQuestions, string> Wrong { get; } = new()
    {
        { Good with { Across = "wide" }, "across" },
        { Good with { PostHeight = "tall" }, "postHeight" },
        { Good with { Shape = "oval" }, "shape" },
        { Good with { Width = "6 cubits" }, "width" },
        { Good with { Rows = "36, 50" }, "rows" },
        { Good with { Sag = "deep" }, "sag" },
        { Good with { Ends = "glued" }, "ends" },
        { Good with { Between = "glued" }, "between" },
        { Good with { Diameter = "thick" }, "diameter" },
        { Good with { Diameter = "15" }, "diameter" },
        { Good with { Due = "soon" }, "due" },
        { Good with { Across = "wide", Rows = "low" }, "across rows" },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void A_mistake_is_said_once_at_its_question_however_many_posts_it_goes_to(DraftQuestions asked, string questions)
    {
        var mistakes = QuestionMistakes.Of(asked.ToForm().OrThrow(), ShopTables.Standard);
        Assert.Equal(questions, string.Join(' ', mistakes.Keys.Order(StringComparer.Ordinal)));
        Assert.All(mistakes.Values, notes => Assert.Equal(NoteKind.Error, Assert.Single(notes).Kind));
    }

    [Fact]
    public void Good_answers_and_answers_left_empty_are_no_mistakes()
    {
        Assert.Empty(QuestionMistakes.Of(Good.ToForm().OrThrow(), ShopTables.Standard));
        Assert.Empty(QuestionMistakes.Of(new DraftQuestions { Posts = "4" }.ToForm().OrThrow(), ShopTables.Standard));
    }
}
