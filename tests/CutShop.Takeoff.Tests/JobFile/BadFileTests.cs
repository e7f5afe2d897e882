namespace CutShop.Takeoff.Tests.JobFile;

/// <summary>A good file with one place changed, and every line that is said of it.</summary>
public class BadFileTests
{
    private static readonly Dictionary<string, string> Phrases = new()
    {
        ["<length>"] = "accepted: a length with its unit, such as \"72 in\", \"5 1/2 in\", \"6 ft 0 in\", \"6' 2 3/8\" or \"1828.8 mm\"",
        ["<number>"] = "accepted: a text of 1 to 40 characters without control characters, slashes, or spaces at its ends",
        ["<mark>"] = "accepted: a text of 1 to 40 characters without control characters or spaces at its ends",
        ["<end>"] = "accepted: stopped, knot, an eye or \"wrap N\" with N turns in halves up to 1000, such as \"wrap 2\" or \"wrap 2.5\"",
        ["<end words>"] = "stopped, knot, an eye or \"wrap N\" with N turns in halves up to 1000, such as \"wrap 2\" or \"wrap 2.5\"",
        ["<between>"] = "accepted: bored, beside or \"wrap N\" with N turns in halves up to 1000, such as \"wrap 2\" or \"wrap 2.5\"",
    };

    [Theory]
    [InlineData("\"number\": \"T-1\", ", "", "$.number: missing; <number>")]
    [InlineData("\"T-1\"", "\"\"", "$.number: \"\": <number>")]
    [InlineData("\"T-1\"", "\" T-1\"", "$.number: \" T-1\": <number>")]
    [InlineData("\"T-1\"", "\"T/1\"", "$.number: \"T/1\": <number>")]
    [InlineData("\"T-1\"", "\"..\"", "$.number: \"..\": <number>")]
    [InlineData("\"T-1\", ", "\"T-1\", \"oneLot\": \"yes\", ", "$.oneLot: \"yes\": accepted: true or false")]
    [InlineData("\"T-1\", ", "\"T-1\", \"datum\": \"botom\", ", "$.datum: \"botom\": accepted: top, ground, foot")]
    [InlineData("\"T-1\", ", "\"T-1\", \"datum\": \"groun\", ", "$.datum: \"groun\": accepted: top, ground, foot; did you mean 'ground'?")]
    [InlineData("\"T-1\", ", "\"T-1\", \"datum\": 2, ", "$.datum: 2: accepted: top, ground, foot")]
    [InlineData("\"T-1\", ", "\"T-1\", \"datum\": \"foot\", ", "$.lines[0].posts[0].buried: missing at post A1 and 2 more, and heights are measured from the foot; accepted: the post's length below ground, such as \"30 in\", or \"0 in\" where it stands on the ground")]
    [InlineData("\"T-1\"", "1042", "$.number: 1042: <number>")]
    [InlineData("\"T-1\"", "\"T\\u000a1\"", "$.number: \"T\\u000a1\": <number>")]
    [InlineData("\"T-1\"", "\"\\ud800\"", "$.number: \"\\ud800\": half a surrogate pair; accepted: whole characters")]
    [InlineData("\"2027-03-12\"", "\"12.3.2027\"", "$.due: \"12.3.2027\": accepted: a date as year-month-day, such as \"2027-03-12\"")]
    [InlineData("\"2027-03-12\"", "\"2027-02-29\"", "$.due: \"2027-02-29\": accepted: a date as year-month-day, such as \"2027-03-12\"")]
    [InlineData("\"Pier\"", "7", "$.customer: 7: accepted: a text")]
    [InlineData("\"manila\"", "\"manilla\"", "$.rope.material: \"manilla\": accepted: polypropylene, polyester, nylon, polyethylene, manila, sisal, hemp, jute, cotton; did you mean 'manila'?")]
    [InlineData("\"manila\"", "\"Manila\"", "$.rope.material: \"Manila\": accepted: polypropylene, polyester, nylon, polyethylene, manila, sisal, hemp, jute, cotton; did you mean 'manila'?")]
    [InlineData("\"material\": \"manila\", ", "", "$.rope.material: missing; accepted: polypropylene, polyester, nylon, polyethylene, manila, sisal, hemp, jute, cotton")]
    [InlineData("\"1 1/2 in\" }", "\"1 1/2\" }", "$.rope.diameter: \"1 1/2\": the unit is missing; <length>")]
    [InlineData("\"1 1/2 in\" }", "\"0 in\" }", "$.rope.diameter: \"0 in\": accepted: above zero")]
    [InlineData("\"1 1/2 in\" }", "1.5 }", "$.rope.diameter: 1.5: <length>")]
    [InlineData("\"1 1/2 in\" }", "\"1 1/2 in\", \"measured\": \"-1 in\" }", "$.rope.measured: \"-1 in\": a negative length is not accepted here; <length>")]
    [InlineData("\"rope\": { \"material\": \"manila\", \"diameter\": \"1 1/2 in\" },", "", "$.rope: missing; accepted: an object with material and diameter")]
    [InlineData("{ \"material\": \"manila\", \"diameter\": \"1 1/2 in\" }", "\"manila\"", "$.rope: \"manila\": accepted: an object with material, diameter, measured, construction, colour")]
    [InlineData("\"12.5%\"", "\"12.5\"", "$.allowances.shrink: \"12.5\": accepted: a share from \"0%\" to \"100%\", with at most four decimals, such as \"12.5%\"")]
    [InlineData("\"12.5%\"", "0.125", "$.allowances.shrink: 0.125: accepted: a share from \"0%\" to \"100%\", with at most four decimals, such as \"12.5%\"")]
    [InlineData("\"12.5%\"", "\"101%\"", "$.allowances.shrink: \"101%\": accepted: a share from \"0%\" to \"100%\", with at most four decimals, such as \"12.5%\"")]
    [InlineData("\"1/4 in\"", "\"0 in\"", "$.allowances.roundUp: \"0 in\": accepted: above zero")]
    [InlineData("\"1 in\",", "\"-1 in\",", "$.allowances.perPiece: \"-1 in\": a negative length is not accepted here; <length>")]
    public void Fields_of_the_job_say_what_is_wrong(string replaced, string by, string problems) => Check(replaced, by, problems);

    [Theory]
    [InlineData("\"mark\": \"A\",", "\"mark\": \"A\", \"mark\": \"B\",", "$.lines[0].mark: \"B\": given twice; each name may appear once in an object")]
    [InlineData("\"mark\": \"A\",\n", "\"Mark\": \"A\",\n", "$.lines[0].Mark: \"A\": unknown name; accepted here: mark, posts, sections, curve, closed, drop, boring, rows; did you mean 'mark'?\n$.lines[0].mark: missing; <mark>")]
    [InlineData("\"A2\", \"shape\"", "\"A1\", \"shape\"", "$.lines[0].rows[1].at.A2: \"wrap 2\": this line has no post of that mark; did you mean 'A1'?\n$.lines[0].posts[1].mark: \"A1\": another post of this job has this mark too, at $.lines[0].posts[0]; accepted: each mark once")]
    [InlineData("\"shape\": \"round\"", "\"shape\": \"hexagon\"", "$.lines[0].posts[1].shape: \"hexagon\": accepted: square, round")]
    [InlineData("\"across\": \"5 1/2 in\", \"height\": \"42 in\", \"turn\"", "\"acros\": \"5 1/2 in\", \"height\": \"42 in\", \"turn\"", "$.lines[0].posts[1].acros: \"5 1/2 in\": unknown name; accepted here: mark, shape, across, girth, height, turn, corner, buried, boring, holes; did you mean 'across'?\n$.lines[0].posts[1].across: missing; <length>")]
    [InlineData("\"90 left\"", "\"90 left\", \"buried\": \"-30 in\"", "$.lines[0].posts[1].buried: \"-30 in\": a negative length is not accepted here; <length>")]
    [InlineData("\"90 left\"", "\"90 left\", \"buried\": 30", "$.lines[0].posts[1].buried: 30: <length>")]
    [InlineData("\"90 left\"", "\"90\"", "$.lines[0].posts[1].turn: \"90\": accepted: a turn above 0 and under 180 degrees, such as \"90 left\" or \"22.5 right\"")]
    [InlineData("\"90 left\"", "\"180 left\"", "$.lines[0].posts[1].turn: \"180 left\": accepted: a turn above 0 and under 180 degrees, such as \"90 left\" or \"22.5 right\"")]
    [InlineData("\"90 left\"", "\"0 right\"", "$.lines[0].posts[1].turn: \"0 right\": accepted: a turn above 0 and under 180 degrees, such as \"90 left\" or \"22.5 right\"")]
    [InlineData("\"90 left\"", "\"90 deg left\"", "$.lines[0].posts[1].turn: \"90 deg left\": accepted: a turn above 0 and under 180 degrees, such as \"90 left\" or \"22.5 right\"")]
    [InlineData("\"42 in\" } ],", "\"-42 in\" } ],", "$.lines[0].posts[2].height: \"-42 in\": a negative length is not accepted here; <length>")]
    [InlineData("{ \"clear\": \"72 in\" }, ", "", "$.lines[0].sections: […]: 1 sections for 3 posts; accepted: one fewer than the posts, here 2")]
    [InlineData("\"clear\": \"72 in\"", "\"clear\": \"72 in\", \"centres\": \"80 in\"", "$.lines[0].sections[0].centres: \"80 in\": clear is given too; accepted: one of clear and centres")]
    [InlineData("{ \"clear\": \"72 in\" }", "{ }", "$.lines[0].sections[0].clear: missing; accepted: clear (face to face) or centres (centre to centre)")]
    [InlineData("\"72 in\"", "\"0 in\"", "$.lines[0].sections[0].clear: \"0 in\": accepted: above zero")]
    [InlineData("\"77 1/2 in\"", "\"5 1/2 in\"", "$.lines[0].sections[1].centres: \"5 1/2 in\": the posts would touch; accepted: above 5 1/2\", half of both posts")]
    [InlineData("\"-2 in\"", "\"2\"", "$.lines[0].sections[1].rise: \"2\": the unit is missing; <length>")]
    [InlineData("\"clear\": \"72 in\"", "\"clear\": \"72 in\", \"sag\": \"1 in\", \"slack\": \"1 in\"", "$.lines[0].sections[0].slack: \"1 in\": sag is given too; accepted: one of sag and slack")]
    [InlineData("\"36 in\"", "\"42 in\"", "$.lines[0].rows[0].height: \"42 in\": not below the top of post A1 and 2 more; accepted: under 3' 6\"")]
    [InlineData("\"36 in\"", "\"1/2 in\"", "$.lines[0].rows[0].height: \"1/2 in\": the 1 11/16 in bore of post A1 and 2 more would cut into the ground; accepted: above 27/32\"")]
    public void Lines_posts_and_sections_say_what_is_wrong(string replaced, string by, string problems) => Check(replaced, by, problems);

    [Theory]
    [InlineData("\"sag\": \"6 in\", ", "", "$.lines[0].rows[0].sag: missing; accepted: sag or slack, here or in every section of the line")]
    [InlineData("\"sag\": \"6 in\"", "\"sag\": \"6 in\", \"slack\": \"3 in\"", "$.lines[0].rows[0].slack: \"3 in\": sag is given too; accepted: one of sag and slack")]
    [InlineData("\"slack\": \"3 in\"", "\"slack\": \"-3 in\"", "$.lines[0].rows[1].slack: \"-3 in\": a negative length is not accepted here; <length>")]
    [InlineData("\"sag\": \"6 in\"", "\"sag\": null", "$.lines[0].rows[0].sag: null: <length>")]
    [InlineData("\"start\": \"stopped\", \"finish\": \"knot\"", "\"start\": \"bored\", \"finish\": \"knot\"", "$.lines[0].rows[0].start: \"bored\": a rope cannot end so; accepted at an end post: <end words>")]
    [InlineData("\"finish\": \"knot\"", "\"finish\": \"knot\", \"between\": \"stopped\"", "$.lines[0].rows[0].between: \"stopped\": a rope cannot end between end posts; <between>")]
    [InlineData("\"finish\": \"knot\"", "\"finish\": \"knot\", \"between\": \"wrap\"", "$.lines[0].rows[0].between: \"wrap\": <between>")]
    [InlineData("\"finish\": \"knot\" }", "\"between\": \"bored\" }", "$.lines[0].rows[0].finish: missing; <end>")]
    [InlineData("\"wrap 2\"", "\"wrap 0\"", "$.lines[0].rows[1].at.A2: \"wrap 0\": <between>")]
    [InlineData("\"wrap 2\"", "\"wrap 2.25\"", "$.lines[0].rows[1].at.A2: \"wrap 2.25\": <between>")]
    [InlineData("\"wrap 2\"", "\"wrap -1\"", "$.lines[0].rows[1].at.A2: \"wrap -1\": <between>")]
    [InlineData("\"wrap 2\"", "\"wrap 1001\"", "$.lines[0].rows[1].at.A2: \"wrap 1001\": <between>")]
    [InlineData("\"wrap 2\"", "\"knot\"", "$.lines[0].rows[1].at.A2: \"knot\": a rope cannot end between end posts; <between>")]
    [InlineData("\"A2\": \"wrap 2\"", "\"A9\": \"wrap 2\"", "$.lines[0].rows[1].at.A9: \"wrap 2\": this line has no post of that mark; did you mean 'A1'?")]
    [InlineData("\"A2\": \"wrap 2\"", "\"A2\": \"wrap 2\", \"A2\": \"bored\"", "$.lines[0].rows[1].at.A2: \"bored\": given twice; each post may appear once")]
    [InlineData("\"A2\": \"wrap 2\"", "\"A1\": \"bored\"", "$.lines[0].rows[1].at.A1: \"bored\": a rope cannot end so; accepted at an end post: <end words>")]
    [InlineData("{ \"A2\": \"wrap 2\" }", "\"wrap 2\"", "$.lines[0].rows[1].at: \"wrap 2\": accepted: an object with post marks and what is done there, such as { \"A4\": \"wrap 2\" }")]
    [InlineData("\"A2\": \"wrap 2\"", "\"A2\": 2", "$.lines[0].rows[1].at.A2: 2: <between>")]
    [InlineData("\"low\"", "\"top\"", "$.lines[0].rows[1].mark: \"top\": another row of this line has this mark too, at $.lines[0].rows[0]; accepted: each mark once")]
    [InlineData("\"across\": \"5 1/2 in\", \"height\": \"42 in\" },", "\"across\": \"1 1/2 in\", \"height\": \"42 in\" },", "$.lines[0].posts[0].across: \"1 1/2 in\": row top needs a 1 11/16 in bit here; accepted: a post wider than the bit\n$.lines[0].posts[0].across: \"1 1/2 in\": row low needs a 1 11/16 in bit here; accepted: a post wider than the bit")]
    [InlineData("\"diameter\": \"1 1/2 in\"", "\"diameter\": \"15 in\"", "$.rope.diameter: \"15 in\": needs a 15 3/16 in bit, and no post that it is bored through is wider than 5 1/2\"; accepted: a rope whose bit is smaller than the posts")]
    public void Rows_and_treatments_say_what_is_wrong(string replaced, string by, string problems) => Check(replaced, by, problems);

    [Theory]
    [InlineData("\"customer\"", "\"x'y\\n\\\\\"", "$['x\\'y\\u000a\\\\']: \"Pier\": unknown name; accepted here: number, customer, due, rope, oneLot, bore, boring, longest, datum, allowances, lines, $schema")]
    [InlineData("\"customer\": \"Pier\"", "\"note\": \"line\\nbreak\u2028here\"", "$.note: \"line\\nbreak\\u2028here\": unknown name; accepted here: number, customer, due, rope, oneLot, bore, boring, longest, datum, allowances, lines, $schema; did you mean 'rope'?")]
    [InlineData("\"lines\": [ {", "\"lines\": [ 7, {", "$.lines[0]: 7: accepted: an object with mark, posts, sections, curve, closed, drop, boring, rows")]
    public void Names_and_shapes_say_what_is_wrong(string replaced, string by, string problems) => Check(replaced, by, problems);
    [Fact]
    public void The_file_that_is_changed_is_good() => Assert.Empty(Sample.Read(Sample.Example("pier")).Problems);

    [Fact]
    public void All_problems_are_named_at_once()
    {
        var json = Sample.Example("pier")
            .Replace("\"manila\"", "\"wool\"", StringComparison.Ordinal)
            .Replace("\"12.5%\"", "12.5", StringComparison.Ordinal)
            .Replace("\"low\"", "\"top\"", StringComparison.Ordinal)
            .Replace("\"wrap 2\"", "\"glued\"", StringComparison.Ordinal)
            .Replace("\"77 1/2 in\"", "\"77 1/2\"", StringComparison.Ordinal);
        Assert.Equal(
            ["$.rope.material", "$.allowances.shrink", "$.lines[0].sections[1].centres", "$.lines[0].rows[1].at.A2", "$.lines[0].rows[1].mark"],
            Sample.Read(json).Problems.Select(problem => problem.Path));
    }

    private static void Check(string replaced, string by, string problems)
    {
        var file = Sample.Example("pier");
        var at = file.IndexOf(replaced, StringComparison.Ordinal);
        Assert.True(at >= 0, "the row replaces nothing");
        var reading = Sample.Read(file[..at] + by + file[(at + replaced.Length)..]);
        Assert.Null(reading.Job);
        foreach (var (phrase, words) in Phrases)
            problems = problems.Replace(phrase, words, StringComparison.Ordinal);
        Assert.Equal(problems, string.Join('\n', reading.Problems));
    }
}
