using CutShop.Paper.Tests.Samples;
using CutShop.Testing.Rendering;

namespace CutShop.Paper.Tests.Labels;

public sealed class PostLabelTests
{
    private static readonly PieceCode Code = PieceCode.Parse("3333-3333-3332").OrThrow();

    // A3 turns left: whoever reads the label on the face toward A4 has the face toward A2 at the right.
    [Theory]
    [InlineData("A1", "A2: this face", null)]
    [InlineData("A2", "A3: this face", "A1: face behind")]
    [InlineData("A3", "A4: this face", "A2: face at the right")]
    [InlineData("A5", "A4: this face", null)]
    public void A_label_says_which_face_looks_where(string post, string thisFace, string? other)
    {
        var text = Poppler.WordsOf(Pdf(post));
        foreach (var said in new[] { post, "Job LQ-1042", "Line A", "UP", thisFace, other ?? "" })
            Assert.Contains(said, text, StringComparison.Ordinal);
        Assert.Equal(other is null ? 1 : 2, text.Split("face").Length - 1);
    }

    [Fact]
    public void A_turn_to_the_right_has_the_other_face_at_the_left()
    {
        var work = PostWork.Of(SampleJobs.Takeoff(SampleJobs.Corner(2))).Single(one => one.Post.Mark == "K3");
        Assert.Equal(("LabelLeft", "K2"), PostLabel.Of("https://shop.example", "LQ-12", work, Code).OrThrow().OtherFace);
    }

    [Fact]
    public void The_code_of_a_label_leads_to_the_line_of_a_piece_at_the_post()
    {
        Assert.Equal("HTTPS://SHOP.EXAMPLE/P/333333333332/LINE#post-A%202", PieceAddress.OfPost("https://shop.example", Code, "A 2").OrThrow());
        Assert.Equal(Label("A2").Address, CodeReader.Read(Poppler.Render(Pdf("A2"), 203)[0]));
    }

    private static PostLabel Label(string post) =>
        PostLabel.Of("https://shop.example", "LQ-1042", PostWork.Of(SampleJobs.Takeoff(SampleJobs.LanternQuay)).Single(one => one.Post.Mark == post), Code).OrThrow();

    private static byte[] Pdf(string post) => LabelPdf.Write("labels", [Label(post)], LabelStock.Default, PaperSettings.Default).OrThrow();
}
