using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;

namespace CutShop.Takeoff.Tests.Rules;

/// <summary>What must not change, or must change in step, when a job is written or measured another way.</summary>
public class MetamorphicTests
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true };

    private static readonly Gen<int> Seeds = Gen.Int[0, int.MaxValue - 1];

    [Fact]
    public void Spaces_between_the_values_change_nothing() =>
        Seeds.Sample(seed =>
        {
            var job = RandomJob.Of(seed);
            Assert.Equal(Written(job.ToJsonString()), Written(job.ToJsonString(Indented)));
        });

    [Fact]
    public void The_order_of_names_in_an_object_changes_nothing() =>
        Seeds.Sample(seed =>
        {
            var job = RandomJob.Of(seed);
            Assert.Equal(Written(job.ToJsonString()), Written(Reversed(job).ToJsonString()));
        });

    [Fact]
    public void Letters_written_as_escapes_change_nothing()
    {
        var json = Sample.Example("boardwalk");
        var escaped = json
            .Replace("\"rows\"", "\"\\u0072ow\\u0073\"", StringComparison.Ordinal)
            .Replace("\"A4\"", "\"\\u00414\"", StringComparison.Ordinal)
            .Replace("72 in", "72\\u0020in", StringComparison.Ordinal);
        Assert.NotEqual(json, escaped);
        Assert.Equal(Written(json), Written(escaped));
    }

    /// <summary>Walked the other way, a line has the same sections, wraps and through bores; only a corner's two runs change places.</summary>
    [Fact]
    public void A_line_walked_the_other_way_takes_the_same_rope() =>
        Seeds.Sample(seed =>
        {
            var job = RandomJob.Of(seed);
            var forward = Sample.Takeoff(job.ToJsonString());
            var backward = Sample.Takeoff(WalkedBack(job).ToJsonString());
            foreach (var line in forward.Job.Lines)
            {
                foreach (var row in line.Rows)
                {
                    var one = forward.Pieces.Where(piece => piece.Line == line.Mark && piece.Row == row.Mark).ToList();
                    var other = backward.Pieces.Where(piece => piece.Line == line.Mark && piece.Row == row.Mark).ToList();
                    Assert.Equal(one.Count, other.Count);
                    Assert.Equal(Total(one), Total(other), 1e-6);
                    if (one.Count == 1)
                        Assert.Equal(one[0].Cut.Inches, other[0].Cut.Inches, 1e-6);
                }
            }
        });

    [Fact]
    public void A_site_twice_as_large_takes_twice_the_net_rope() =>
        Seeds.Sample(seed =>
        {
            var job = RandomJob.Of(seed);
            job.Remove("allowances");
            var one = Sample.Takeoff(job.ToJsonString());
            var two = Sample.Takeoff(Doubled(job).ToJsonString());
            Assert.All(one.Pieces.Zip(two.Pieces), pair => Assert.Equal(2 * pair.First.Net.Inches, pair.Second.Net.Inches, 1e-5));
            Assert.All(one.Bores.Zip(two.Bores), pair => Assert.Equal(2 * pair.First.Height.Inches, pair.Second.Height.Inches, 1e-9));
        });

    [Fact]
    public void More_sag_never_makes_a_shorter_piece() =>
        Gen.Select(Gen.Int[0, 900], Gen.Int[1, 200]).Sample((sag, more) =>
        {
            Assert.True(NetWithSag(sag) < NetWithSag(sag + more));

            static Length NetWithSag(int sixteenths) => Sample.Takeoff(Sample.Line(
                $$"""{ "mark": "top", "height": "30 in", "sag": "{{sixteenths}} 1/64 in", "start": "stopped", "finish": "stopped" }""")).Pieces[0].Net;
        });

    [Fact]
    public void A_job_of_two_lines_is_the_two_jobs_of_one() =>
        Seeds.Sample(seed =>
        {
            var job = RandomJob.Of(seed);
            var whole = Sample.Takeoff(job.ToJsonString());
            var parts = job["lines"]!.AsArray().Select(line =>
            {
                var part = job.DeepClone().AsObject();
                part["lines"] = new JsonArray(line!.DeepClone());
                return Sample.Takeoff(part.ToJsonString());
            }).ToList();
            Assert.Equal(whole.Pieces.Select(piece => (piece.Run, piece.Cut)), parts.SelectMany(part => part.Pieces).Select(piece => (piece.Run, piece.Cut)));
            Assert.Equal(whole.Warnings.Select(warning => warning.Text), parts.SelectMany(part => part.Warnings).Select(warning => warning.Text));
        });

    private static double Total(List<Piece> pieces) => pieces.Sum(piece => piece.Net.Inches);

    private static string Written(string json)
    {
        using var stream = new MemoryStream();
        TakeoffJson.Write(Sample.Takeoff(json), stream);
        return System.Text.Encoding.UTF8.GetString(stream.ToArray());
    }

    private static JsonNode Reversed(JsonNode node) => node switch
    {
        JsonObject members => new JsonObject(members.Reverse().Select(member => KeyValuePair.Create(member.Key, (JsonNode?)Reversed(member.Value!)))),
        JsonArray elements => new JsonArray([.. elements.Select(element => Reversed(element!))]),
        _ => node.DeepClone(),
    };

    private static JsonObject WalkedBack(JsonObject job)
    {
        var back = job.DeepClone().AsObject();
        foreach (var line in back["lines"]!.AsArray())
        {
            foreach (var name in new[] { "posts", "sections" })
                line![name] = new JsonArray([.. line[name]!.AsArray().Reverse().Select(element => element!.DeepClone())]);
            foreach (var section in line!["sections"]!.AsArray())
            {
                if (section!["rise"]?.GetValue<string>() is { } rise)
                    section["rise"] = rise.StartsWith('-') ? rise[1..] : "-" + rise;
            }
            foreach (var row in line["rows"]!.AsArray())
                (row!["start"], row["finish"]) = (row["finish"]!.DeepClone(), row["start"]!.DeepClone());
        }
        return back;
    }

    private static JsonNode Doubled(JsonNode node) => node switch
    {
        JsonObject members => new JsonObject(members.Select(member => KeyValuePair.Create(member.Key, (JsonNode?)Doubled(member.Value!)))),
        JsonArray elements => new JsonArray([.. elements.Select(element => Doubled(element!))]),
        _ when LengthText.Parse(node.GetValue<string>(), allowNegative: true) is { IsGood: true } length => (2 * length.Value).ToString(),
        _ => node.DeepClone(),
    };
}
