using CutShop.Paper.Tests.Samples;
using CutShop.Testing.Rendering;

namespace CutShop.Paper.Tests.Tickets;

public sealed class DrillTicketTests
{
    [Fact]
    public void A_ticket_says_everything_that_the_driller_needs()
    {
        var text = Poppler.WordsOf(Pdf(SampleJobs.LanternQuay, "A2"));
        // By hand: bit 1 1/2 + 1/16, up to the next on the rack, 1 5/8; through 5 1/2 / 2 + 1/8 deep from each face; wall (5 1/2 - 1 5/8) / 2.
        foreach (var said in new[]
        {
            "Drill ticket", "Post A2", "LQ-1042", "square, 5 1/2 in (139.7 mm)", "42 in (1066.8 mm)", "1 5/8 in", "36 in", "914.4 mm",
            "6 in", "toward A1", "toward A3", "2 7/8 in", "1 15/16 in", "threaded Forstner bit", "stainless",
            "clamp the post", "Eye protection", "mask", "never burn",
        })
            Assert.Contains(said, text, StringComparison.Ordinal);
    }

    public static TheoryData<UnitsFirst, string> Papers => new() { { UnitsFirst.FeetInches, "en" }, { UnitsFirst.Millimetres, "en" }, { UnitsFirst.FeetInches, "es" } };

    [Theory]
    [MemberData(nameof(Papers))]
    public void Every_figure_of_every_post_is_on_its_sheet_in_both_units(UnitsFirst units, string language)
    {
        var settings = PaperSettings.Default with { Units = units, Text = language == "es" ? PaperText.Spanish : PaperText.English };
        foreach (var json in new[] { SampleJobs.LanternQuay, SampleJobs.TwoPosts(), SampleJobs.TwoPosts(start: "knot", finish: "wrap 3"), SampleJobs.ManyRows(12) })
        {
            var takeoff = SampleJobs.Takeoff(json);
            foreach (var work in PostWork.Of(takeoff))
            {
                var sheet = SheetOf(takeoff, work, settings);
                var text = Poppler.WordsOf(PdfSheets.Write("t", [sheet], settings));
                foreach (var length in LengthsOf(work))
                {
                    Assert.Contains(LengthText.Inches(length, length.IsWhole(Length.FromSixtyFourths(1)) ? 64 : 16), text, StringComparison.Ordinal);
                    Assert.Contains(LengthText.Millimetres(length), text, StringComparison.Ordinal);
                }
            }
        }
    }

    // Not from the sheet's own order or grouping: each bore and each screw of the takeoff is looked for by itself.
    [Fact]
    public void Every_bore_and_every_screw_of_the_takeoff_has_its_line_on_its_post_s_sheet()
    {
        foreach (var json in new[] { SampleJobs.LanternQuay, SampleJobs.TwoPosts(finish: "wrap 3"), SampleJobs.ManyRows(12) })
        {
            var takeoff = SampleJobs.Takeoff(json);
            foreach (var work in PostWork.Of(takeoff))
            {
                var tables = SheetOf(takeoff, work, PaperSettings.Default).Blocks.OfType<TableBlock>().ToList();
                var bores = tables.Where(table => table.Caption.StartsWith("Drilling", StringComparison.Ordinal)).SelectMany(table => table.Rows).ToList();
                Assert.Equal(work.Bores.Sum(bore => bore.Operations.Count), bores.Count);
                foreach (var bore in work.Bores)
                {
                    foreach (var operation in bore.Operations)
                    {
                        var (mark, bit, collar) = (Plain(operation.Mark), Plain(bore.Bit), Plain(StopCollar.For(operation.Depth)));
                        Assert.Single(bores, row => row[1] == bore.Row && row[2] == operation.Face.ToString() && row[7] == bore.Run
                            && row[3].Replace('\u00A0', ' ').StartsWith(mark, StringComparison.Ordinal) && row[5].Replace('\u00A0', ' ') == bit && row[6].Replace('\u00A0', ' ') == collar);
                    }
                }
                var screws = tables.Where(table => !table.Caption.StartsWith("Drilling", StringComparison.Ordinal)).SelectMany(table => table.Rows).Select(row => string.Join('\n', row).Replace('\u00A0', ' ')).ToList();
                foreach (var fixing in work.Fixings)
                {
                    Assert.Contains(screws, row => row.Contains($"{fixing.Count} × {fixing.Screw}", StringComparison.Ordinal)
                        && row.Contains($"{fixing.Row}: {Plain(fixing.Mark)}", StringComparison.Ordinal)
                        && row.Contains(fixing.Face.ToString(), StringComparison.Ordinal)
                        && row.Contains(Plain(fixing.Pilot), StringComparison.Ordinal));
                }
            }
        }
    }

    [Fact]
    public void A_rake_is_said_with_its_angle_and_its_way()
    {
        // atan(9 / 78) is 6.6 degrees.
        Assert.Contains("6.6° down toward A4", Poppler.WordsOf(Pdf(SampleJobs.LanternQuay, "A5")), StringComparison.Ordinal);
    }

    [Fact]
    public void Wrapped_posts_stand_on_one_sheet_each_with_a_box_to_tick()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.LanternQuay);
        var sheets = DrillTicket.All(takeoff, PaperSettings.Default).ToList();
        Assert.Equal(["Post A1", "Post A2", "Post A3", "Post A4", "Post A5", "Post P2", "Post P4", "Wrapped posts"], sheets.Select(sheet => sheet.Subject));
        var rows = Assert.Single(sheets[^1].Blocks.OfType<TableBlock>()).Rows;
        Assert.Equal(["P1", "P3"], rows.Select(row => row[1]));
        Assert.All(rows, row => Assert.Equal("☐", row[0]));
        var text = Poppler.WordsOf(PdfSheets.Write("t", [sheets[^1]], PaperSettings.Default));
        foreach (var said in new[] { "No bores in these posts", "around the post", "☐", "turns 60° right" })
            Assert.Contains(said, text, StringComparison.Ordinal);
    }

    // The corner A3 has four bores and four screws on four faces; A5 is raked and ends in a knot.
    [Theory]
    [MemberData(nameof(Papers))]
    public void A_post_takes_one_sheet_on_either_page(UnitsFirst units, string language)
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.LanternQuay);
        foreach (var page in new[] { PageSize.Letter, PageSize.A4 })
        {
            var settings = new PaperSettings(units, page, language == "es" ? PaperText.Spanish : PaperText.English);
            foreach (var sheet in DrillTicket.All(takeoff, settings))
                Assert.True(Poppler.PageSizes(PdfSheets.Write("t", [sheet], settings)).Count == 1, $"{sheet.Subject} takes more than one page");
        }
    }

    // Posts with four rows; then a corner with twelve: 24 bores and 24 screws.
    [Fact]
    public void Four_rows_fit_a_sheet_at_a_line_post_and_twelve_at_a_corner_take_two()
    {
        Assert.Single(Poppler.PageSizes(Pdf(SampleJobs.Corner(4), "K2")));
        var pdf = Pdf(SampleJobs.Corner(12), "K3");
        Assert.Equal(2, Poppler.PageSizes(pdf).Count);
        var text = Poppler.WordsOf(pdf);
        Assert.Contains("Drill ticket Post K3 (continued)", text, StringComparison.Ordinal);
        foreach (var row in Enumerable.Range(1, 12))
        {
            Assert.Contains($"K-r{row}-1", text, StringComparison.Ordinal);
            Assert.Contains($"K-r{row}-2", text, StringComparison.Ordinal);
            Assert.Equal(4, text.Split($" r{row}: ").Length - 1);
        }
    }

    [Fact]
    public void A_post_with_many_bores_goes_on_over_more_pages_and_loses_none()
    {
        var pdf = Pdf(SampleJobs.ManyRows(40), "T2");
        Assert.InRange(Poppler.PageSizes(pdf).Count, 3, 60);
        var text = Poppler.TextOf(pdf);
        foreach (var row in Enumerable.Range(1, 40))
            Assert.Matches($@"(?m)^ *\d+ .*\br{row} +toward T1\b", text);
        Assert.Contains("(continued)", text, StringComparison.Ordinal);
    }

    // The posts stand 30 in deep; the row is at 36 in of 42.
    [Theory]
    [InlineData("ground", "Mark above ground", "36 in (914.4 mm)")]
    [InlineData("top", null, null)]
    [InlineData("foot", "Mark from the foot", "66 in (1676.4 mm)")]
    public void Heights_are_told_from_the_datum_and_from_the_top_beside_it_for_bores_and_screw_holes(string datum, string? heading, string? mark)
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.TwoPosts()
            .Replace("\"rope\"", $"\"datum\": \"{datum}\", \"rope\"", StringComparison.Ordinal)
            .Replace("\"height\": \"42 in\"", "\"height\": \"42 in\", \"buried\": \"30 in\"", StringComparison.Ordinal));
        var work = PostWork.Of(takeoff).First();
        var tables = DrillTicket.Of(JobHead.Of(takeoff.Job), work, PaperSettings.Default).Blocks.OfType<TableBlock>().ToList();
        Assert.Equal(2, tables.Count);
        foreach (var table in tables)
        {
            string[] expected = heading is null ? ["Mark from the top"] : [heading, "from the top"];
            Assert.Equal(expected, table.Columns.Where(column => column.Contains("ground", StringComparison.Ordinal) || column.Contains("from the", StringComparison.Ordinal)));
            var row = string.Join(" | ", table.Rows[0]).Replace('\u00A0', ' ');
            Assert.Matches(@"(^|\W)6 in\b", row);
            if (mark is not null)
                Assert.Contains(mark, row, StringComparison.Ordinal);
        }
    }

    // A #12 x 4 deck screw is measured over its flat head: its point is 4 in from the face.
    [Fact]
    public void A_flat_head_has_a_countersink_and_the_pilot_goes_as_deep_as_the_screw()
    {
        var text = Poppler.WordsOf(Pdf(SampleJobs.TwoPosts(), "B1"));
        Assert.Contains("countersink", text, StringComparison.Ordinal);
        Assert.Contains("4 in (101.6 mm) deep", text, StringComparison.Ordinal);
        Assert.Contains("pilot first, then countersink", text, StringComparison.Ordinal);
        Assert.DoesNotContain("ounterbore", text, StringComparison.Ordinal);
    }

    // AWPA M4, section 6: cuts and holes in treated wood are treated again.
    [Theory]
    [InlineData("en", "brush the cut with field preservative")]
    [InlineData("es", "aplicar con brocha conservante")]
    public void Treated_wood_is_brushed_after_every_cut(string language, string said)
    {
        var settings = PaperSettings.Default with { Text = language == "es" ? PaperText.Spanish : PaperText.English };
        foreach (var sheet in DrillTicket.All(SampleJobs.Takeoff(SampleJobs.TwoPosts()), settings))
            Assert.Contains(said, Poppler.WordsOf(PdfSheets.Write("t", [sheet], settings)), StringComparison.Ordinal);
    }

    // 32 3/4 in of rise over 65 1/2 in from centre to centre is 1 in 2, 26.6 degrees; the bore is half of 5 1/2 in farther on, 1 3/8 in higher or lower.
    [Fact]
    public void A_raked_pilot_has_its_rake_and_the_height_at_which_it_enters_its_face()
    {
        var text = Poppler.WordsOf(Pdf(SampleJobs.LongSlope, "J1"));
        foreach (var said in new[] { "rake: 26.6° up toward J2", "37 3/8 in", "top: 34 5/8 in (≈ 879.5 mm)", "26.6° up toward J2", "A raked pilot has its bore's bevel", "pilot 7/64 in, 26.6°, enters at", "low: 14 in", "rake: level" })
            Assert.Contains(said, text, StringComparison.Ordinal);
    }

    // The two screws of a join stand a quarter of 5 1/2 in from either face, 1 3/8 in beside the middle; at 1 in 2 that is 11/16 in higher and lower.
    [Fact]
    public void The_two_screws_of_a_join_are_placed_beside_the_middle_of_their_face()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.LongSlope);
        var joins = takeoff.Fixings.Where(fixing => fixing.Purpose == FixingPurpose.Join).ToList();
        var post = joins.First(fixing => fixing.Row == "top").Post.Mark;
        var text = Poppler.WordsOf(Pdf(SampleJobs.LongSlope, post));
        // Who looks at the side that is at the left when facing the next post has that post, which is higher, at the left.
        Assert.Contains("one hole 1 3/8 in to each side of the face's middle: the left one at 36 11/16 in, the right one at 35 5/16 in", text, StringComparison.Ordinal);
        Assert.Contains("one hole 1 3/8 in to each side of the face's middle", Poppler.WordsOf(Pdf(SampleJobs.LongSlope, joins.First(fixing => fixing.Row == "low").Post.Mark)), StringComparison.Ordinal);
    }

    // The corner of 60 degrees that docs/job-file.md has worked by hand: skew 15, and 2 3/4 in tan 15 = 0.736860 in. By hand: a line that turns right at 60 degrees has
    // its post turned 15 to the left of square to the way in, so who looks at it along the way in sees the face turned, and the bit goes to the right of square.
    [Fact]
    public void A_skewed_bore_says_to_which_side_its_bit_points_and_where_its_centre_is()
    {
        var text = Poppler.WordsOf(Pdf(SampleJobs.RealSites, "L1"));
        Assert.Contains("skew: bit 15.0° to the right, centre ≈ 3/4 in left of the face's middle", text, StringComparison.Ordinal);
        Assert.Contains("skew: bit 15.0° to the left, centre ≈ 3/4 in right of the face's middle", text, StringComparison.Ordinal);
        Assert.Contains("A skewed bore", text, StringComparison.Ordinal);
        var through = Poppler.WordsOf(Pdf(SampleJobs.RealSites, "M1"));
        Assert.Contains("the rope bends 15.0° at each mouth", through, StringComparison.Ordinal);
        Assert.Contains("stands turned on the bisector", through, StringComparison.Ordinal);
    }

    [Fact]
    public void A_hole_that_is_there_is_named_as_such_and_is_no_work()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.RealSites);
        var work = PostWork.Of(takeoff).Single(one => one.Post.Mark == "H1");
        var tables = DrillTicket.Of(JobHead.Of(takeoff.Job), work, PaperSettings.Default).Blocks.OfType<TableBlock>().ToList();
        Assert.Equal(["low"], tables.Single(table => table.Caption.StartsWith("Drilling", StringComparison.Ordinal)).Rows.Select(row => row[1]));
        var there = Assert.Single(tables.Single(table => table.Caption == "Already there: do not bore").Rows);
        Assert.Equal("top", there[0]);
        Assert.StartsWith("35 in", there[1].Replace('\u00A0', ' '), StringComparison.Ordinal);
        Assert.StartsWith("1 5/8 in", there[3].Replace('\u00A0', ' '), StringComparison.Ordinal);
        Assert.Contains("top is there", Poppler.WordsOf(Pdf(SampleJobs.RealSites, "H1")), StringComparison.Ordinal);
    }

    // A #12 x 4 has 2 5/8 in of thread and 1 3/8 in of plain shank: about two thirds and a third (from memory).
    [Fact]
    public void A_screw_that_is_loaded_sideways_has_a_hole_for_its_shank_with_a_depth()
    {
        var text = Poppler.WordsOf(Pdf(SampleJobs.LanternQuay, "A2"));
        Assert.Contains("shank 3/16 in (≈ 4.8 mm), 1 3/8 in deep", text, StringComparison.Ordinal);
    }

    private static string Plain(Length length) => LengthText.Inches(length, length.IsWhole(Length.FromSixtyFourths(1)) ? 64 : 16);

    private static Sheet SheetOf(JobTakeoff takeoff, PostWork work, PaperSettings settings) => work.Bores.Count > 0
        ? DrillTicket.Of(JobHead.Of(takeoff.Job), work, settings)
        : DrillTicket.All(takeoff, settings).Last();

    private static IEnumerable<Length> LengthsOf(PostWork work) => work.Drillings()
        .SelectMany(d => new[] { d.Bore.Bit, d.Bore.Wall, d.Mark, work.Post.HeightFrom(Datum.Top, d.Mark), d.Operation.Depth, d.Collar })
        .Concat(work.Fixings.SelectMany(f => new[] { f.Mark, f.Pilot, f.Counterbore, f.CounterboreDepth, f.ShankHole }).Where(length => length.IsPositive))
        .Append(work.Post.Across)
        .Append(work.Post.Height);

    private static byte[] Pdf(string json, string post)
    {
        var takeoff = SampleJobs.Takeoff(json);
        var work = PostWork.Of(takeoff).Single(w => w.Post.Mark == post);
        return PdfSheets.Write("t", [DrillTicket.Of(JobHead.Of(takeoff.Job), work, PaperSettings.Default)], PaperSettings.Default);
    }
}
