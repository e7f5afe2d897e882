using System.Text.Json.Nodes;
using static CutShop.Testing.Jobs.JobText;

namespace CutShop.Takeoff.Tests.Rules;

/// <summary>One row's rope at one post, as <see cref="Oracle"/> sees it; inches and degrees. A ring's first post is there twice.</summary>
/// <param name="Post">The post in the file.</param>
/// <param name="Kind">stopped, through, corner, knot, wrap, beside, eye, or join at the first post of a ring.</param>
/// <param name="How">What the row says: "stopped", "wrap 2 inside", { "eye": … }.</param>
/// <param name="W">The post's width.</param>
/// <param name="Turn">The post's turn, left positive; 0 at the ends of an open line.</param>
/// <param name="Y">The rope's height at the post.</param>
/// <param name="IsRaked">Held by a bore that follows the slope.</param>
/// <param name="Hole">The hole that is there already.</param>
internal sealed record OracleStand(JsonNode Post, string Kind, JsonNode How, double W, double Turn, double Y, bool IsRaked, JsonNode? Hole)
{
    private static readonly string[] Bores = ["stopped", "through", "corner", "knot", "join"];

    public string Mark => Text(Post["mark"])!;

    public bool IsSquare => Text(Post["shape"]) == "square";

    public bool IsBored => Bores.Contains(Kind);

    /// <summary>t / 2 in radians where one straight bore stands on the bisector.</summary>
    public double Bend => Kind is "through" or "join" ? Turn * Math.PI / 360 : 0;

    /// <summary>s in degrees: the skew at which each bore of a corner enters a square post.</summary>
    public double Skew => Kind != "corner" || !IsSquare ? 0 : Math.Abs(Turn) <= 45 ? Math.Abs(Turn) / 2 : Math.Abs(90 - Math.Abs(Turn)) / 2;

    /// <summary>m, from the centre to the mouth of a bore.</summary>
    public double Mouth => W / 2 / Math.Cos(Skew * Math.PI / 180);

    /// <summary>e, from the centre to where the rope is held.</summary>
    public double Hold => Kind switch { "wrap" or "beside" => 0, "eye" => (W / 2) + Inches(How["eye"]!["reach"])!.Value, _ => Mouth };

    /// <summary>Its part of r, over which a raked bore climbs.</summary>
    public double RakedHalf => IsRaked ? W / 2 : 0;

    /// <summary>g, from the hold to the nearest screw.</summary>
    public double ToScrew(bool isJoined) => isJoined ? W / 4 : Kind switch { "knot" => W, "stopped" or "through" or "corner" => Mouth, _ => 0 };

    /// <summary>Wood beside a bore of a width.</summary>
    public double Wall(double bore) => Skew == 0
        ? (W - bore) / 2
        : (W / 2) - (W / 2 * Math.Tan(Skew * Math.PI / 180)) - (bore / 2 / Math.Cos(Skew * Math.PI / 180));

    /// <summary>The turned part of a wrap, or of a rope that passes beside.</summary>
    public double Turned(double d) => Math.Abs(Turn) / 360 * OneTurn(d);

    /// <summary>N turns, unrolled: the way round by the climb.</summary>
    public double Wrapped(double turns, double d) => double.Hypot(turns * OneTurn(d), turns * d);

    private double OneTurn(double d) => IsSquare ? (4 * W) + (Math.PI * d) : Math.PI * (W + d);
}
