using CsCheck;

using JobWords = CutShop.Takeoff.JobFile.JobWords;

namespace CutShop.Takeoff.Tests.JobFile;

public class MarkedTextTests
{
    [Theory]
    [InlineData("A4: wrap 2, A7: wrap 3", "A4|wrap 2", "A7|wrap 3")]
    [InlineData("A4 wrap 2; A7 bored", "A4|wrap 2", "A7|bored")]
    [InlineData("A2: 1,70 m, A3: 34", "A2|1,70 m", "A3|34")]
    [InlineData("7: wrap 2,8: wrap 3", "7|wrap 2", "8|wrap 3")]
    [InlineData("row 2: 34", "row 2|34")]
    [InlineData("A2: 5' 6\", A3: 66\"", "A2|5' 6\"", "A3|66\"")]
    [InlineData("\"a, b\": 34, \"say \"\"when\"\"\" 35", "a, b|34", "say \"when\"|35")]
    [InlineData("\"never closed, 34", "\"never|closed", "34|")]
    [InlineData("A4", "A4|")]
    [InlineData(" , ; ")]
    public void A_field_that_speaks_of_many_is_read_by_mark(string typed, params string[] parts) =>
        Assert.Equal(parts, MarkedText.Parts(typed).Select(part => $"{part.Mark}|{part.Text}"));

    [Fact]
    public void A_comma_does_not_part_where_only_semicolons_do() =>
        Assert.Equal([("A,1", "wrap 2"), ("A2", "bored")], MarkedText.Parts("A,1: wrap 2; A2: bored", isPartedByCommas: false));

    [Fact]
    public void Any_marks_are_written_so_that_they_read_back()
    {
        var mark = Gen.Char["Aa1 ,;:\"'-"].Array[1, 12].Select(letters => new string(letters)).Where(JobWords.IsMark);
        string[] texts = ["34 in", "33 1/2 in", "1889.125 mm", "wrap 2", "1 5/8 in at 35 1/2 in level"];
        var text = Gen.Int[0, texts.Length - 1].Select(i => texts[i]);
        Gen.Select(mark, text).Array[0, 6].Sample(parts => Assert.Equal(parts, MarkedText.Parts(MarkedText.Of(parts))));
    }

    [Theory]
    [InlineData("1 5/8 in at 35 1/2 in level", "1 5/8 in", "35 1/2 in", "level")]
    [InlineData("1 5/8", "1 5/8", null, null)]
    [InlineData("41 mm raked", "41 mm", null, "raked")]
    [InlineData("at 35", null, "35", null)]
    [InlineData("", null, null, null)]
    public void A_hole_is_read_from_its_field(string typed, string? across, string? height, string? bore)
    {
        var hole = MarkedText.Hole(typed);
        var fields = new Dictionary<string, string?>();
        foreach (var field in hole.Fields)
            fields[field.Name] = field.Value.Text;
        Assert.Equal((across, height, bore), (fields.GetValueOrDefault("across"), fields.GetValueOrDefault("height"), fields.GetValueOrDefault("bore")));
    }
}
