using System.Globalization;
using System.Text;
using CutShop.Takeoff;

namespace CutShop.Museum;

/// <summary>The jobs of Lantern Quay that the museum's shop takes in.</summary>
internal static class MuseumJobs
{
    /// <summary>The job of a job file.</summary>
    public static Job Read(string json)
    {
        var reading = JobFileReader.Read(Encoding.UTF8.GetBytes(json));
        return reading.Job ?? throw new InvalidDataException(string.Join('\n', reading.Problems));
    }

    /// <summary>A plain job: one line of square posts, two rows of rope.</summary>
    public static string Plain(
        string number, int posts, string customer, string? due, string material = "polypropylene", string diameter = "1 1/2 in", string line = "A", string more = "", string sag = "5 in", string clear = "72 in")
    {
        var day = due is null ? "" : $"\"due\": \"{due}\",";
        var marks = Enumerable.Range(1, posts).Select(i => string.Create(CultureInfo.InvariantCulture, $"{line}{i}"));
        return $$"""
            { "number": "{{number}}", "customer": "{{customer}}", {{day}} {{more}} "rope": { "material": "{{material}}", "diameter": "{{diameter}}" },
              "lines": [ { "mark": "{{line}}",
                "posts": [ {{string.Join(", ", marks.Select(mark => $$"""{ "mark": "{{mark}}", "shape": "square", "across": "5 1/2 in", "height": "42 in" }"""))}} ],
                "sections": [ {{string.Join(", ", Enumerable.Repeat($$"""{ "clear": "{{clear}}" }""", posts - 1))}} ],
                "rows": [ { "mark": "top", "height": "36 in", "sag": "{{sag}}", "start": "stopped", "finish": "stopped" },
                          { "mark": "low", "height": "18 in", "sag": "{{sag}}", "start": "stopped", "finish": "knot" } ] } ] }
            """;
    }

    /// <summary>Several lines of the same posts, each with two rows.</summary>
    public static string Lines(string number, string marks, int posts, string customer, string due, string more = "", string turnAt = "", string material = "polypropylene")
    {
        var lines = marks.Select(line => $$"""
            { "mark": "{{line}}",
              "posts": [ {{string.Join(", ", Enumerable.Range(1, posts).Select(i => $$"""{ "mark": "{{line}}{{i}}", "shape": "square", "across": "5 1/2 in", "height": "42 in"{{(turnAt == $"{line}{i}" ? ", \"turn\": \"90 left\"" : "")}} }"""))}} ],
              "sections": [ {{string.Join(", ", Enumerable.Range(1, posts - 1).Select(i => $$"""{ "clear": "{{60 + i + line - 'A'}} in" }"""))}} ],
              "rows": [ { "mark": "top", "height": "36 in", "sag": "4 in", "start": "stopped", "finish": "stopped" }, { "mark": "low", "height": "20 in", "slack": "1 in", "start": "stopped", "finish": "stopped" } ] }
            """);
        return $$"""{ "number": "{{number}}", "customer": "{{customer}}", "due": "{{due}}", {{more}} "rope": { "material": "{{material}}", "diameter": "1 1/2 in" }, "lines": [ {{string.Join(", ", lines)}} ] }""";
    }

    /// <summary>Everything that the geometry has: corners, rakes, round posts, wraps inside and outside with half turns, knots, slack, metric lengths, ropes of a row's own, one measured.</summary>
    public const string Geometry =
        """
        { "number": "LQ-2007", "customer": "Lantern Quay, the crooked pier", "due": "2026-11-20",
          "rope": { "material": "manila", "diameter": "1 1/2 in", "measured": "1 9/16 in" },
          "allowances": { "shrink": "12.5%", "perPiece": "2 in", "roundUp": "1/2 in" },
          "lines": [
            { "mark": "G", "posts": [
                { "mark": "G1", "shape": "square", "across": "5 1/2 in", "height": "44 in" },
                { "mark": "G2", "shape": "square", "across": "5 1/2 in", "height": "44 in" },
                { "mark": "G3", "shape": "square", "across": "5 1/2 in", "height": "44 in", "turn": "90 left" },
                { "mark": "G4", "shape": "square", "across": "5 3/8 in", "height": "44 1/4 in" },
                { "mark": "G5", "shape": "round", "across": "6 1/8 in", "height": "44 in", "turn": "90 right" },
                { "mark": "G6", "shape": "square", "across": "140 mm", "height": "1118 mm" } ],
              "sections": [ { "clear": "72 in", "rise": "9 in" }, { "centres": "80 1/4 in", "rise": "-7 1/2 in" }, { "clear": "6' 2 3/8\"" }, { "clear": "1.83 m", "rise": "120 mm", "slack": "40 mm" }, { "clear": "183 cm", "sag": "0 in" } ],
              "rows": [
                { "mark": "top", "height": "36 in", "slack": "2 1/2 in", "start": "stopped", "finish": "knot", "between": "bored" },
                { "mark": "mid", "height": "24 in", "sag": "4 in", "start": "knot", "finish": "stopped", "rope": { "material": "polyester", "diameter": "1 1/4 in" } },
                { "mark": "low", "height": "330 mm", "sag": "50 mm", "start": "wrap 2", "finish": "stopped", "at": { "G2": "wrap 1.5", "G5": "wrap 2.5 inside" }, "rope": { "material": "polypropylene", "diameter": "32 mm", "measured": "33 mm" } } ] },
            { "mark": "H", "posts": [
                { "mark": "H1", "shape": "round", "across": "9 1/2 in", "height": "48 in" },
                { "mark": "H2", "shape": "round", "across": "9 1/2 in", "height": "48 in", "turn": "60 right" },
                { "mark": "H3", "shape": "round", "across": "9 1/2 in", "height": "48 in", "turn": "22.5 left" },
                { "mark": "H4", "shape": "square", "across": "9 1/2 in", "height": "48 in" } ],
              "sections": [ { "centres": "96 in" }, { "centres": "90 in" }, { "centres": "2400 mm", "rise": "6 in" } ],
              "rows": [ { "mark": "rope", "height": "36 in", "sag": "8 in", "start": "wrap 3", "finish": "wrap 2.5", "between": "wrap 2", "at": { "H2": "wrap 2 inside", "H3": "wrap 0.5" }, "rope": { "material": "manila", "diameter": "2 in" } } ] } ] }
        """;

    /// <summary>A job that has every warning there is, and a screw that nothing in the catalogue is.</summary>
    public const string Warnings =
        """
        { "number": "LQ-2008", "customer": "Lantern Quay, against advice",
          "rope": { "material": "manila", "diameter": "1 1/2 in", "measured": "2 in" }, "allowances": { "shrink": "0%" },
          "lines": [
            { "mark": "W", "posts": [
                { "mark": "W1", "shape": "square", "across": "3 1/2 in", "height": "38 in", "turn": "90 left" },
                { "mark": "W2", "shape": "square", "across": "3 1/2 in", "height": "38 in", "turn": "45 left" },
                { "mark": "W3", "shape": "square", "across": "3 1/2 in", "height": "38 in" } ],
              "sections": [ { "clear": "72 in" }, { "clear": "120 in", "sag": "34 in" } ],
              "rows": [
                { "mark": "top", "height": "36 1/2 in", "sag": "12 in", "start": "stopped", "finish": "stopped" },
                { "mark": "next", "height": "33 in", "sag": "19 in", "start": "stopped", "finish": "stopped", "rope": { "material": "nylon", "diameter": "1 1/4 in" } },
                { "mark": "third", "height": "20 in", "sag": "2 in", "start": "stopped", "finish": "stopped" } ] },
            { "mark": "X", "posts": [
                { "mark": "X1", "shape": "square", "across": "4 5/8 in", "height": "42 in" },
                { "mark": "X2", "shape": "square", "across": "4 5/8 in", "height": "42 in" } ],
              "sections": [ { "clear": "72 in" } ],
              "rows": [ { "mark": "hawser", "height": "30 in", "sag": "4 in", "start": "stopped", "finish": "stopped", "rope": { "material": "polypropylene", "diameter": "4 in" } } ] } ] }
        """;

    /// <summary>A job from a spreadsheet.</summary>
    public const string Sheet =
        """
        number,customer,due,material,diameter,one lot
        LQ-2016,"Lantern Quay, from a sheet",2026-12-01,polypropylene,1 1/4 in,yes

        line,post,shape,across,height,turn,clear,centres,rise
        S,S1,square,4 in,42 in,,72 in,,
        S,S2,square,4 in,42 in,,,77 1/2 in,-2 in
        S,S3,square,4 in,42 in,,,,

        line,row,height,sag,slack,start,finish,between,at
        S,top,36 in,6 in,,stopped,knot,bored,
        S,low,18 in,,3 in,stopped,stopped,bored,S2: wrap 2
        """;

    /// <summary>Marks and a number that an address must escape.</summary>
    public const string Marks =
        """
        { "number": "LQ 2014 b", "customer": "Lantern Quay: \"the <long> walk\" & more, Ñandú ½", "due": "2026-10-30",
          "rope": { "material": "polypropylene", "diameter": "1 1/2 in" },
          "lines": [ { "mark": "Ä", "posts": [
                { "mark": "Ä 1", "shape": "square", "across": "5 1/2 in", "height": "42 in" },
                { "mark": "+2?", "shape": "square", "across": "5 1/2 in", "height": "42 in" },
                { "mark": "gate #3", "shape": "square", "across": "5 1/2 in", "height": "42 in" } ],
              "sections": [ { "clear": "72 in" }, { "clear": "60 in" } ],
              "rows": [ { "mark": "oben", "height": "36 in", "sag": "4 in", "start": "stopped", "finish": "stopped" } ] } ] }
        """;

    /// <summary>About two hundred posts: ten lines of twenty, by turns with a corner, a slope and wraps.</summary>
    public static string Large(string number)
    {
        var lines = Enumerable.Range(0, 10).Select(n =>
        {
            var mark = string.Create(CultureInfo.InvariantCulture, $"L{n}");
            var posts = Enumerable.Range(1, 20).Select(i => string.Create(
                CultureInfo.InvariantCulture,
                $$"""{ "mark": "{{mark}}.{{i}}", "shape": "{{(n % 5 == 4 ? "round" : "square")}}", "across": "5 1/2 in", "height": "42 in"{{(i == 11 && n % 3 == 1 ? ", \"turn\": \"90 right\"" : "")}} }"""));
            var sections = Enumerable.Range(1, 19).Select(i => string.Create(
                CultureInfo.InvariantCulture, $$"""{ "clear": "{{66 + (i % 4)}} {{(i % 7) + 1}}/16 in"{{(n % 4 == 2 ? $", \"rise\": \"{(i % 5) - 2} in\"" : "")}} }""")).Select(text => text.Replace("4/16", "1/4", StringComparison.Ordinal));
            var low = n % 5 == 4 ? """ "start": "wrap 2", "finish": "wrap 2", "between": "wrap 1" """ : """ "start": "stopped", "finish": "stopped" """;
            return $$"""
                { "mark": "{{mark}}", "posts": [ {{string.Join(", ", posts)}} ], "sections": [ {{string.Join(", ", sections)}} ],
                  "rows": [ { "mark": "top", "height": "36 in", "sag": "5 1/2 in", "start": "stopped", "finish": "stopped" }, { "mark": "low", "height": "18 in", "sag": "4 in", {{low}} } ] }
                """;
        });
        return $$"""
            { "number": "{{number}}", "customer": "Lantern Quay, the long walk", "due": "2027-01-15", "rope": { "material": "polypropylene", "diameter": "1 1/2 in" },
              "lines": [ {{string.Join(", ", lines)}} ] }
            """;
    }

    /// <summary>A job of random shape, to be taken in whatever warnings it has.</summary>
    public static Job Random(string number, Random chance)
    {
        for (; ; )
        {
            var reading = JobFileReader.Read(Encoding.UTF8.GetBytes(RandomText(number, chance)));
            if (reading.Job is { } job)
                return job;
        }
    }

    private static string RandomText(string number, Random chance)
    {
        var isNatural = chance.Next(3) == 0;
        var natural = isNatural ? ", \"allowances\": { \"shrink\": \"" + chance.Next(5, 16) + "%\", \"perPiece\": \"" + chance.Next(3) + " in\" }" : "";
        var lines = Enumerable.Range(0, chance.Next(1, 4)).Select(n =>
        {
            var mark = (char)('A' + n);
            var count = chance.Next(2, 8);
            var isRound = chance.Next(4) == 0;
            var posts = Enumerable.Range(1, count).Select(i =>
                $$"""{ "mark": "{{mark}}{{i}}", "shape": "{{(isRound ? "round" : "square")}}", "across": "{{Of(chance, "5 1/2 in", "5 3/8 in", "6 in", "140 mm", "7 1/4 in")}}", "height": "{{Of(chance, "42 in", "44 1/2 in", "1100 mm", "48 in")}}"{{(i > 1 && i < count && chance.Next(4) == 0 ? $", \"turn\": \"{Of(chance, "90 left", "90 right", "45 left", "30 right")}\"" : "")}} }""");
            var sections = Enumerable.Range(1, count - 1).Select(_ =>
                $$"""{ "{{Of(chance, "clear", "centres")}}": "{{Of(chance, "72 in", "66 1/2 in", "6 ft 2 3/8 in", "1830 mm", "2.1 m", "81 5/16 in")}}"{{(chance.Next(3) == 0 ? $", \"rise\": \"{Of(chance, "6 in", "-9 in", "3 3/4 in", "-80 mm")}\"" : "")}}{{(chance.Next(6) == 0 ? ", \"slack\": \"1 1/2 in\"" : "")}} }""");
            string[] heights = ["36 in", "24 1/2 in", "13 in"];
            var rows = Enumerable.Range(0, chance.Next(1, 4)).Select(r =>
            {
                var wrap = chance.Next(4) == 0;
                var (end, between) = wrap ? ($"wrap {Of(chance, "2", "2.5", "3")}", Of(chance, "wrap 1", "wrap 1.5", "wrap 2 inside", "bored")) : (Of(chance, "stopped", "stopped", "knot"), "bored");
                return $$"""{ "mark": "r{{r}}", "height": "{{heights[r]}}", "{{Of(chance, "sag", "sag", "slack")}}": "{{Of(chance, "2 in", "3 1/4 in", "60 mm", "4 in")}}", "start": "{{end}}", "finish": "{{Of(chance, end, "stopped")}}", "between": "{{between}}" }""";
            });
            return $$"""{ "mark": "{{mark}}", "posts": [ {{string.Join(", ", posts)}} ], "sections": [ {{string.Join(", ", sections)}} ], "rows": [ {{string.Join(", ", rows)}} ] }""";
        });
        return $$"""
            { "number": "{{number}}", "customer": "Lantern Quay, walk {{number}}", "due": "2026-12-{{chance.Next(10, 29)}}", "oneLot": {{(chance.Next(3) == 0 ? "true" : "false")}},
              "rope": { "material": "{{(isNatural ? "manila" : "polypropylene")}}", "diameter": "{{Of(chance, "1 1/2 in", "1 1/2 in", "1 1/4 in")}}" }{{natural}}, "lines": [ {{string.Join(", ", lines)}} ] }
            """;
    }

    private static string Of(Random chance, params string[] all) => all[chance.Next(all.Length)];
}
