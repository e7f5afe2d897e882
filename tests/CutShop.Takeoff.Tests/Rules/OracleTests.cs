using CsCheck;

namespace CutShop.Takeoff.Tests.Rules;

public class OracleTests
{
    private const double Tolerance = 1e-5;

    [Fact]
    public void Any_job_comes_out_as_a_second_reckoning_has_it() =>
        Gen.Int[0, int.MaxValue - 1].Sample(
            seed =>
            {
                var json = RandomJob.Of(seed);
                var takeoff = Sample.Takeoff(json.ToJsonString());
                var (pieces, bores) = Oracle.Of(json);
                ComparePieces(pieces, takeoff.Pieces);
                CompareBores(bores, takeoff.Bores);
            },
            iter: 400);

    private static void ComparePieces(List<OraclePiece> expected, IReadOnlyList<Piece> actual)
    {
        Assert.Equal(expected.Select(piece => piece.Run), actual.Select(piece => piece.Run));
        foreach (var (oracle, piece) in expected.Zip(actual))
        {
            Assert.Equal(oracle.AtPosts.Select(at => (at.Post, at.Kind)), piece.AtPosts.Select(at => (at.Post.Mark, TakeoffJson.Word(at.Kind))));
            Near(oracle.AtPosts.Select(at => at.Length), piece.AtPosts.Select(at => at.Length));
            Near(oracle.Sections.Select(section => section.Chord), piece.Sections.Select(section => section.Chord));
            Near(oracle.Sections.Select(section => section.Sag), piece.Sections.Select(section => section.Sag));
            Near(oracle.Sections.Select(section => section.Arc), piece.Sections.Select(section => section.Arc));
            Near([oracle.Net], [piece.Net]);
            Assert.InRange(piece.Cut.Inches, oracle.Needed - Tolerance, oracle.Needed + oracle.Step + Tolerance);
            Assert.True(piece.Cut.IsWhole(Length.RoundedFromInches(oracle.Step)));
        }
    }

    private static void CompareBores(List<OracleBore> expected, IReadOnlyList<Bore> actual)
    {
        Assert.Equal(expected.Select(bore => (bore.Post, bore.Kind)), actual.Select(bore => (bore.Post.Mark, TakeoffJson.Word(bore.Kind))));
        Near(expected.Select(bore => bore.Bit), actual.Select(bore => bore.Bit));
        Near(expected.Select(bore => bore.Wall), actual.Select(bore => bore.Wall));
        Assert.Equal(
            expected.SelectMany(bore => bore.Operations).Select(operation => operation.Face),
            actual.SelectMany(bore => bore.Operations).Select(operation => operation.Face.ToString()));
        Near(expected.SelectMany(bore => bore.Operations).Select(operation => operation.Depth), actual.SelectMany(bore => bore.Operations).Select(operation => operation.Depth));
    }

    private static void Near(IEnumerable<double> expected, IEnumerable<Length> actual)
    {
        var (reckoned, taken) = (expected.ToList(), actual.Select(length => length.Inches).ToList());
        Assert.Equal(reckoned.Count, taken.Count);
        Assert.All(reckoned.Zip(taken), pair => Assert.Equal(pair.First, pair.Second, Tolerance));
    }
}
