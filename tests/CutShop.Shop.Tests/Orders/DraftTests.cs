using CutShop.Testing.Jobs;

namespace CutShop.Shop.Tests.Orders;

public sealed class DraftTests
{
    [Theory]
    [InlineData("lq-1042-north-walk.json")]
    [InlineData("lq-1043-beach-ramp.json")]
    [InlineData("lq-1044-lamp-pier.json")]
    public void A_stored_job_becomes_a_draft_that_reads_back_as_the_same_job(string file)
    {
        var job = JobFileReader.Read(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "demo", file))).Job!;
        var reading = DraftReading.Of(DraftOf.Job(job), ShopTables.Standard);
        Assert.Equal(0, reading.Errors);
        Assert.Equal(JobFileWriter.Write(job), JobFileWriter.Write(reading.Takeoff!.Job));
    }

    [Fact]
    public void A_draft_is_the_same_after_it_went_through_its_fields()
    {
        var form = SmallJobs.FourPosts() with { Customer = "a < b & \"c\"" };
        Assert.Equal(DraftFields.ToJson(form), DraftFields.ToJson(DraftFields.Read(DraftFields.Of(form))));
    }

    [Fact]
    public void Some_fields_of_a_draft_are_changed_and_no_others()
    {
        var before = SmallJobs.FourPosts();
        var form = DraftFields.With(before, [new("lines[0].posts[2].across", "7 1/2"), new("customer", "Pier"), new("rope.measured", "1 5/8"), new("version", "3"), new("lines[9].mark", "X"), new("lines[0]", "X"), new("rope", "X")]);
        Assert.Equal(("7 1/2", "1 5/8"), (form.Lines[0].Posts[2].Across, form.Rope.Measured));
        Assert.Equal(DraftFields.ToJson(SmallJobs.FourPosts()), DraftFields.ToJson(before));
        Assert.Equal(
            DraftFields.ToJson(SmallJobs.FourPosts() with { Customer = "Pier" }),
            DraftFields.ToJson(DraftFields.With(form, [new("lines[0].posts[2].across", "5 1/2"), new("rope.measured", "")])));
    }

    [Fact]
    public void Every_field_of_a_draft_is_found_and_changed_by_its_name()
    {
        var form = SmallJobs.FourPosts();
        foreach (var (name, text) in DraftFields.Of(form))
        {
            Assert.Equal(text, DraftFields.TextAt(form, JobPlace.Find(name)!.Value));
            Assert.Equal(DraftFields.Of(form).Select(field => field.Key == name ? new(name, "other") : field), DraftFields.Of(DraftFields.With(form, [new(name, "other")])));
        }
    }

    [Theory]
    [InlineData("lines[0]", "x")]
    [InlineData("lines", "x")]
    [InlineData("lines[999999999].mark", "x")]
    [InlineData("lines[-1].mark", "x")]
    [InlineData("rope", "x")]
    [InlineData("nothing.of.ours", "x")]
    [InlineData("", "x")]
    [InlineData("lines[0].posts[0].mark.mark", "x")]
    public void Names_that_are_no_field_never_break_the_reading(string name, string text)
    {
        var form = DraftFields.Read([new("number", "LQ-1"), new(name, text)]);
        Assert.True(form.Number is "LQ-1" or "");
        Assert.Same(form, DraftFields.With(form, [new(name, text)]));
        Assert.Null(DraftFields.TextAt(SmallJobs.FourPosts(), JobPlace.Find(name) ?? JobPlace.Job));
    }

    [Theory]
    [InlineData("6", "ft", "feet: 6' 0\" = 1828.8 mm")]
    [InlineData("74 3/8", "in", "inches: 6' 2 3/8\" ≈ 1889.1 mm")]
    [InlineData("6' 2 3/8", "in", "6' 2 3/8\" ≈ 1889.1 mm")]
    [InlineData("1890 mm", "in", "1890 mm ≈ 6' 2 7/16\"")]
    [InlineData("1890", "mm", "millimetres: 1890 mm ≈ 6' 2 7/16\"")]
    [InlineData("1,70 m", "in", "1700 mm ≈ 5' 6 15/16\"")]
    [InlineData("39 10 1/4", "in", "feet and inches: 39' 10 1/4\" ≈ 12147.6 mm")]
    [InlineData("5-6", "ft", "feet and inches: 5' 6\" = 1676.4 mm")]
    [InlineData("66-1/2", "in", "inches: 5' 6 1/2\" = 1689.1 mm")]
    [InlineData("5 6", "mm", "")]
    [InlineData("1,700", "in", "")]
    [InlineData("1890", "", "")]
    [InlineData("six", "in", "")]
    public void What_was_typed_is_echoed_as_understood(string typed, string unit, string echo) =>
        Assert.Equal(echo, TypedLength.Echo(typed, unit));

    [Fact]
    public void A_bare_number_without_a_unit_of_the_draft_is_an_error_at_its_field()
    {
        var reading = DraftReading.Of(SmallJobs.FourPosts() with { Unit = "" }, ShopTables.Standard);
        var note = Assert.Single(reading.At("lines[0].posts[2].across"));
        Assert.Equal(NoteKind.Error, note.Kind);
        Assert.StartsWith("The unit is missing", note.Text, StringComparison.Ordinal);
        Assert.Null(reading.Takeoff);
    }

    [Fact]
    public void Each_problem_of_the_job_file_stands_at_the_field_it_speaks_of()
    {
        var form = SmallJobs.FourPosts();
        var line = form.Lines[0];
        form = form with
        {
            Number = "a/b",
            Lines =
            [
                line with
                {
                    Posts = [line.Posts[0], line.Posts[1] with { Mark = "A1" }, line.Posts[2] with { Turn = "around" }, line.Posts[3]],
                    Sections = [line.Sections[0] with { Width = "" }, line.Sections[1] with { Spacing = "centres", Width = "5 in" }, line.Sections[2]],
                    Rows = [line.Rows[0] with { Slack = "3" }, line.Rows[1] with { Sag = "", At = "A9: wrap 2, A2 nailed" }],
                },
            ],
        };
        var errors = DraftReading.Of(form, ShopTables.Standard).Problems.Where(pair => pair.Value.Any(note => note.Kind == NoteKind.Error)).Select(pair => pair.Key.Name);
        Assert.Equal(
            [
                "lines[0].posts[1].mark", "lines[0].posts[2].turn", "lines[0].rows[0].slack", "lines[0].rows[1].at", "lines[0].rows[1].sag",
                "lines[0].sections[0].width", "lines[0].sections[1].width", "number",
            ],
            errors.Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("15", "rope.diameter")]
    [InlineData("150", "rope.diameter")]
    public void A_rope_too_thick_for_every_post_is_one_error_at_its_diameter(string diameter, string field)
    {
        var reading = DraftReading.Of(SmallJobs.FourPosts() with { Rope = new() { Material = "polypropylene", Diameter = diameter } }, ShopTables.Standard);
        Assert.Equal((1, field), (reading.Errors, Assert.Single(reading.Problems).Key.Name));
    }

    [Fact]
    public void A_post_too_narrow_for_two_rows_is_one_error_at_the_post()
    {
        var form = SmallJobs.FourPosts();
        var line = form.Lines[0];
        form = form with { Lines = [line with { Posts = [line.Posts[0], line.Posts[1] with { Across = "1" }, .. line.Posts.Skip(2)] }] };
        var reading = DraftReading.Of(form, ShopTables.Standard);
        Assert.Equal((1, "lines[0].posts[1].across"), (reading.Errors, Assert.Single(reading.Problems).Key.Name));
    }

    [Fact]
    public void Lengths_are_read_in_the_draft_as_people_write_them_and_one_of_two_meanings_is_refused()
    {
        var form = SmallJobs.FourPosts();
        var line = form.Lines[0];
        string[] widths = ["5 6", "1m70", "66-1/2"];
        var reading = DraftReading.Of(form with { Unit = "in", Lines = [line with { Sections = [.. widths.Select((width, i) => line.Sections[i] with { Width = width })] }] }, ShopTables.Standard);
        Assert.Equal(["66 in", "1700 mm", "66 1/2 in"], reading.Takeoff!.Job.Lines[0].Sections.Select(section => LengthText.Brief(section.Width)));
        var refused = DraftReading.Of(form with { Unit = "in", Lines = [line with { Sections = [line.Sections[0] with { Width = "1,700" }, .. line.Sections.Skip(1)] }] }, ShopTables.Standard);
        Assert.StartsWith("'1,700' can be read as a decimal or as thousands", Assert.Single(refused.At("lines[0].sections[0].width")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_warning_stands_at_its_field_with_its_places()
    {
        var form = SmallJobs.FourPosts() with { Rope = new() { Material = "polypropylene", Diameter = "1 in" } };
        var warnings = DraftReading.Of(form, ShopTables.Standard).At("lines[0].posts[0].across");
        Assert.Contains(warnings, note => note.Kind == NoteKind.Warning && note.Text.Contains("common is 1 1/2 in to 2 in", StringComparison.Ordinal));
    }

    [Fact]
    public void A_bit_that_the_rack_lacks_is_a_warning_beside_the_rope()
    {
        var lacking = ShopTables.Standard with { Rack = new BitRack([]) };
        var notes = DraftReading.Of(SmallJobs.FourPosts(), lacking).Problems.SelectMany(pair => pair.Value);
        Assert.Contains(notes, note => note.Text.Contains("no 1 9/16 in bit on the rack", StringComparison.Ordinal));
    }

    [Fact]
    public void A_post_added_in_the_middle_has_the_next_free_mark_and_a_section_of_its_own()
    {
        var line = DraftEdits.AddPost(SmallJobs.FourPosts(), line: 0, after: 1).Lines[0];
        Assert.Equal(["A1", "A2", "A5", "A3", "A4"], line.Posts.Select(post => post.Mark));
        Assert.Equal(4, line.Sections.Count);
    }

    [Fact]
    public void Two_posts_one_row_and_one_line_always_stay()
    {
        var form = SmallJobs.FourPosts();
        for (var i = 0; i < 9; i++)
            form = DraftEdits.RemoveLine(DraftEdits.RemoveRow(DraftEdits.RemovePost(form, 0, 0), 0, 0), 0);
        var line = Assert.Single(form.Lines);
        Assert.Equal(["A3", "A4"], line.Posts.Select(post => post.Mark));
        Assert.Single(line.Sections);
        Assert.Single(line.Rows);
    }

    [Theory]
    [InlineData(-1, 0)]
    [InlineData(1, 0)]
    [InlineData(0, -1)]
    [InlineData(0, 4)]
    public void A_step_on_something_that_is_not_there_changes_nothing(int line, int post)
    {
        var form = SmallJobs.FourPosts();
        var json = DraftFields.ToJson(form);
        Assert.Equal(json, DraftFields.ToJson(DraftEdits.AddPost(form, line, post)));
        Assert.Equal(json, DraftFields.ToJson(DraftEdits.RemovePost(form, line, post)));
    }

    [Fact]
    public void A_duplicated_line_has_new_marks_also_where_single_posts_are_named()
    {
        var form = SmallJobs.FourPosts();
        form = form with { Lines = [form.Lines[0] with { Rows = [form.Lines[0].Rows[0] with { At = "A2 wrap 2" }] }] };
        var line = DraftEdits.DuplicateLine(form, 0).Lines[1];
        Assert.Equal("B", line.Mark);
        Assert.Equal(["B1", "B2", "B3", "B4"], line.Posts.Select(post => post.Mark));
        Assert.Equal("B2: wrap 2", line.Rows[0].At);
        Assert.Equal(0, DraftReading.Of(DraftEdits.DuplicateLine(form, 0), ShopTables.Standard).Errors);
    }

    [Fact]
    public void Rows_of_a_spreadsheet_become_posts_and_sections()
    {
        const string text = "Mark\tAcross\tHeight\tCentres\tRise\tTurn\r\nP1\t5 1/2\t42\t77 1/2\t1 in\t\r\nP2\t140 mm\t42\t80\t\t90 left\r\nP3\t5 1/2\t42\r\n\r\n";
        var line = SpreadsheetPaste.Into(SmallJobs.FourPosts(), 0, text).OrThrow().Lines[0];
        Assert.Equal(["P1", "P2", "P3"], line.Posts.Select(post => post.Mark));
        Assert.Equal(new DraftPost { Mark = "P2", Shape = "square", Across = "140 mm", Height = "42", Turn = "90 left" }, line.Posts[1]);
        Assert.Equal(
            [new DraftSection { Spacing = "centres", Width = "77 1/2", Rise = "1 in" }, new DraftSection { Spacing = "centres", Width = "80" }],
            line.Sections);
    }

    [Theory]
    [InlineData("", "Nothing was pasted")]
    [InlineData("A1\tsquare\t5 1/2", "1 posts")]
    [InlineData("mark\twood\nA1\tpine\nA2\tpine", "\"wood\" is not a column")]
    [InlineData("mark\nA1\tpine\nA2", "Row 1 has 2 cells for 1 columns")]
    public void A_paste_that_cannot_be_taken_says_what_is_accepted(string text, string problem)
    {
        var taken = SpreadsheetPaste.Into(SmallJobs.FourPosts(), 0, text);
        Assert.StartsWith(problem, taken.Problem, StringComparison.Ordinal);
        Assert.Contains("accepted:", taken.Problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1")]
    [InlineData("401")]
    [InlineData("four")]
    [InlineData("")]
    public void Only_the_number_of_posts_can_stop_a_draft_from_starting(string posts) =>
        Assert.Equal("Accepted: a whole number from 2 to 400", new DraftQuestions { Posts = posts, Sag = "?" }.ToForm().Problem);
}
