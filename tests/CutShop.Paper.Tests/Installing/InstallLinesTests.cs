using CutShop.Paper.Tests.Samples;

namespace CutShop.Paper.Tests.Installing;

public class InstallLinesTests
{
    [Fact]
    public void Every_step_of_any_piece_has_words_in_both_languages_and_the_same_figures()
    {
        var takeoffs = new[] { SampleJobs.LanternQuay, SampleJobs.TwoPosts(start: "knot", finish: "wrap 2"), SampleJobs.TwoPosts(hang: "\"sag\": \"0 in\""), SampleJobs.Gate }.Select(SampleJobs.Takeoff);
        foreach (var takeoff in takeoffs)
        {
            foreach (var piece in takeoff.Pieces)
            {
                var english = InstallLines.Of(takeoff, piece, PaperSettings.Default);
                var spanish = InstallLines.Of(takeoff, piece, PaperSettings.Default with { Text = PaperText.Spanish });
                Assert.Equal(english.Count, spanish.Count);
                foreach (var (one, other) in english.Zip(spanish))
                {
                    Assert.NotEqual(one.Text, other.Text);
                    Assert.Equal(one.Screws is null, other.Screws is null);
                    Assert.Equal(Digits(one.Screws), Digits(other.Screws));
                }
            }
        }
    }

    private static string Digits(string? text) => new([.. (text ?? "").Where(char.IsAsciiDigit)]);
}
