namespace CutShop.Paper;

/// <content>Words of hanging rope on site.</content>
public partial class PaperText
{
    /// <summary>A height above the ground.</summary>
    public virtual string AboveGround(string height) => $"{height} above ground";

    /// <summary>A pilot hole.</summary>
    public virtual string PilotHole(string diameter) => $"pilot {diameter}";

    /// <summary>A screw's head on a wrap.</summary>
    public virtual string HeadInTheRope => "head below the rope's surface";

    /// <summary>A flat head.</summary>
    public virtual string CountersunkFlush(string across) => $"countersink {across} across until the head is flush";

    /// <summary>A head below the wood's surface.</summary>
    public virtual string Counterbored(string across, string deep) => $"counterbore {across} across, {deep} deep";

    /// <summary>Lay the rope out and choose the end to start with.</summary>
    public virtual string LayOut(string start, string finish, bool finishTakesUp) => finishTakesUp
        ? $"Lay the rope along the line without twist. Start at {start}: that end cannot be made longer or shorter; the end at {finish} takes up what the site differs."
        : $"Lay the rope along the line without twist. Start at {start} and work toward {finish}.";

    /// <summary>The first rope of a corner comes first.</summary>
    public virtual string FirstRopeIsIn(string corner, string firstRun) =>
        $"See that {firstRun} is in and screwed at corner {corner}: this piece is the second rope there.";

    /// <summary>An end that stops half way into a post.</summary>
    public virtual string EndInBore(string post, bool isStart) => isStart
        ? $"{post}: push the end to the bottom of the bore, hold it there, and drive its screw."
        : $"{post}: push the end to the bottom of the bore. When every section hangs right, drive its screw.";

    /// <summary>The first rope of a corner.</summary>
    public virtual string FirstAtCorner(string post) =>
        $"{post}, corner, first rope: push the end to the middle of the post and drive its screw. The second rope comes to stand against its side.";

    /// <summary>The second rope of a corner.</summary>
    public virtual string SecondAtCorner(string post) =>
        $"{post}, corner, second rope: push the end until it stands against the first rope, and drive the long screw through the first rope into this one.";

    /// <summary>A stopper knot behind a post.</summary>
    public virtual string TieKnot(string post, string inner, bool isStart) => isStart
        ? $"{post}: the knot sits behind the post, on the side away from {inner}. Tie an overhand stopper knot in the end, pass the rope through toward {inner}, and pull the knot hard against the post. No screw."
        : $"{post}: the knot sits behind the post, on the side away from {inner}. When every section hangs right, tie an overhand stopper knot hard against the post. No screw. Cut nothing off before that.";

    /// <summary>Rope through bored posts.</summary>
    public virtual string PassThrough(string posts) => $"Pass the rope through {posts}. Drive no screw yet.";

    /// <summary>A section without sag.</summary>
    public virtual string PullStraight(string first, string second) => $"{first} – {second}: pull the rope straight along a string stretched from post to post.";

    /// <summary>A section's sag.</summary>
    public virtual string SetSag(string first, string second, string sag) =>
        $"{first} – {second}: stretch a string where the rope meets the two posts. At the middle the rope hangs {sag} below the string.";

    /// <summary>The screw that holds the sag.</summary>
    public virtual string DriveLineScrew(string post) => $"{post}: hold the rope so and drive its screw from the side.";

    /// <summary>Turns round a post.</summary>
    public virtual string WindRound(string post, decimal turns, bool clockwise) => Say(
        $"{post}: wind the rope {turns:0.#} {(turns == 1 ? "turn" : "turns")} round the post, {(clockwise ? "clockwise" : "counter-clockwise")} seen from above, each turn touching the one before, the middle one at the row's height. Pull tight, then drive the screws.");
}
