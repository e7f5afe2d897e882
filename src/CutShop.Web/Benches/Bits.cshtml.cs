using CutShop.Shop.Benches;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Tables;

namespace CutShop.Web.Benches;

/// <summary>The bits that the posts to drill want, and the bores that are drilled alike with each.</summary>
public sealed class BitsModel(DrillBench bench) : BenchPage
{
    private const int MostPosts = 12;

    /// <summary>Posts that wait or are at the bench.</summary>
    public int Posts { get; private set; }

    /// <summary>The bits, the largest first.</summary>
    public IReadOnlyList<BitWanted> Bits { get; private set; } = [];

    /// <summary>Shows the list.</summary>
    public void OnGet()
    {
        var open = bench.ToDrill();
        Posts = open.Count;
        var drillings = open.SelectMany(post => post.Post.Drillings().Select(drilling => (post.Job, Drilling: drilling)));
        Bits =
        [
            .. drillings.GroupBy(x => (x.Drilling.Bore.Bit, x.Drilling.Bore.BitChoice.Kind, x.Drilling.Bore.BitChoice.OnRack))
                .OrderByDescending(bit => bit.Key.Bit).ThenBy(bit => bit.Key.Kind)
                .Select(bit => new BitWanted(bit.Key.Bit, bit.Key.Kind, bit.Key.OnRack, [.. GroupsOf(bit)])),
        ];
    }

    private static IEnumerable<BoresAlike> GroupsOf(IEnumerable<(string Job, Drilling Drilling)> drillings) =>
        drillings.GroupBy(x => (x.Drilling.Bore.Kind, x.Drilling.Collar)).OrderBy(alike => alike.Key.Kind).ThenBy(alike => alike.Key.Collar).Select(alike =>
        {
            var posts = alike.Select(x => $"{x.Job} {x.Drilling.Bore.Post.Mark}").Distinct().ToList();
            var shown = string.Join(", ", posts.Take(MostPosts));
            return new BoresAlike(alike.Key.Kind, alike.Key.Collar, alike.Count(), posts.Count > MostPosts ? $"{shown} + {posts.Count - MostPosts}" : shown);
        });
}

/// <summary>A bit that is wanted.</summary>
/// <param name="Bit">Its diameter.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="OnRack">True where the rack has it.</param>
/// <param name="Groups">What is drilled with it, alike together.</param>
public sealed record BitWanted(Length Bit, BitKind Kind, bool OnRack, IReadOnlyList<BoresAlike> Groups);

/// <summary>Bores drilled alike.</summary>
/// <param name="BoreKind">Stopped, through, corner or knot.</param>
/// <param name="Collar">The stop collar's setting.</param>
/// <param name="Drillings">How many drillings.</param>
/// <param name="Posts">In which posts.</param>
public sealed record BoresAlike(AtPostKind BoreKind, Length Collar, int Drillings, string Posts);
