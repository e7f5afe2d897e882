namespace CutShop.Paper;

/// <content>Words on drawings.</content>
public partial class PaperText
{
    /// <summary>Title of an elevation; bands are counted only where there are several.</summary>
    public virtual string ElevationTitle(string line, int band, int bands, int oneTo) =>
        bands == 1 ? Say($"Line {line}, elevation, 1 : {oneTo}") : Say($"Line {line}, elevation, part {band} of {bands}, 1 : {oneTo}");

    /// <summary>What an elevation shows.</summary>
    public virtual string ElevationDescription(string first, string last, int posts, int rows) =>
        Say($"Side view from post {first} to post {last}: {posts} posts on the ground's slope, {rows} rows of rope hanging in their curves, with widths, heights and sags.");

    /// <summary>Title of a plan.</summary>
    public virtual string PlanTitle(int oneTo) => Say($"Plan, seen from above, 1 : {oneTo}");

    /// <summary>What a plan shows.</summary>
    public virtual string PlanDescription(string lines) => $"Posts and rope lines from above, each line in its own place: {lines}.";

    /// <summary>What a plan with one run in bold shows.</summary>
    public virtual string PlanWithRun(string description, string run) => $"{description} Run {run} is drawn bold.";

    /// <summary>A line's name.</summary>
    public virtual string LineName(string mark) => $"Line {mark}";

    /// <summary>A sag.</summary>
    public virtual string Sag(string figure) => $"sag {figure}";

    /// <summary>No sag.</summary>
    public virtual string Straight => "straight";

    /// <summary>A clear width.</summary>
    public virtual string Clear(string figure) => $"{figure} clear";

    /// <summary>A width from centre to centre.</summary>
    public virtual string Centres(string figure) => $"{figure} centres";

    /// <summary>A rise of the ground.</summary>
    public virtual string Rise(string figure) => $"rise {figure}";

    /// <summary>A fall of the ground.</summary>
    public virtual string Fall(string figure) => $"fall {figure}";

    /// <summary>A turn of the line.</summary>
    public virtual string TurnOf(decimal degrees, bool left) => Say($"turns {degrees:0.##}° {(left ? "left" : "right")}");

    /// <summary>A count of turns.</summary>
    public virtual string Turns(decimal turns) => Say($"{turns:0.#} turns");

    /// <summary>Bands that were left out.</summary>
    public virtual string NotDrawn(int posts) => Say($"{posts} more posts of this line are not drawn; their figures are on their tickets.");

    /// <summary>Title of the drilled faces of a post.</summary>
    public virtual string FacesTitle(string post, int oneTo) => Say($"Post {post}, drilled faces, 1 : {oneTo}");

    /// <summary>What the faces show.</summary>
    public virtual string FacesDescription(string faces) => $"The post seen from each drilled face, with heights from the foot: {faces}.";

    /// <summary>Title of the cross-sections of a post.</summary>
    public virtual string SectionsTitle(int oneTo) => Say($"Cross-sections, 1 : {oneTo}");

    /// <summary>What the cross-sections show.</summary>
    public virtual string SectionsDescription(string rows) => $"The post cut through the bores of rows {rows}, from above, and from the side where a bore is raked.";

    /// <summary>Above dimensions from the foot.</summary>
    public virtual string FromFoot => "from foot";

    /// <summary>A bit's diameter.</summary>
    public virtual string BitOf(string figure) => $"bit {figure}";

    /// <summary>A pilot hole's diameter.</summary>
    public virtual string PilotOf(string figure) => $"pilot {figure}";

    /// <summary>A section from above.</summary>
    public virtual string FromAbove(string rows) => $"{rows}: from above";

    /// <summary>A section from the side.</summary>
    public virtual string FromSide(string rows) => $"{rows}: from the side";

    /// <summary>A rake and where it climbs to.</summary>
    public virtual string RakeUpToward(string degrees, string post) => $"{degrees} up toward {post}";

    /// <summary>A rake and where it falls to.</summary>
    public virtual string RakeDownToward(string degrees, string post) => $"{degrees} down toward {post}";

    /// <summary>The hole of a screw in a row.</summary>
    public virtual string ScrewAt(string row) => $"{row} screw";

    /// <summary>A side wall.</summary>
    public virtual string WallOf(string figure) => $"side wall {figure}";

    /// <summary>No rake.</summary>
    public virtual string Level => "level";

    /// <summary>Title of a code's picture.</summary>
    public virtual string LabelTitle(string code) => $"Label of piece {code}";

    /// <summary>What a label shows.</summary>
    public virtual string LabelDescription(string address) => $"A square code that holds the address {address}, and the piece's figures beside it.";
}
