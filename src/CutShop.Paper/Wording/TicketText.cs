using CutShop.Takeoff;

namespace CutShop.Paper;

/// <content>Words on tickets and summaries.</content>
public partial class PaperText
{
    /// <summary>Title of a cut ticket.</summary>
    public virtual string CutTicket => "Cut ticket";

    /// <summary>Title of a drill ticket.</summary>
    public virtual string DrillTicket => "Drill ticket";

    /// <summary>Title of a job summary.</summary>
    public virtual string JobSummary => "Job summary";

    /// <summary>A label.</summary>
    public virtual string Job => "Job";

    /// <summary>A label.</summary>
    public virtual string Customer => "Customer";

    /// <summary>A label.</summary>
    public virtual string Due => "Due";

    /// <summary>A day, the same in every language: year, month, day.</summary>
    public virtual string DayOf(DateOnly day) => IsoDate.Text(day);

    /// <summary>No day that a job is due.</summary>
    public virtual string NoDay => "no day set";

    /// <summary>A label.</summary>
    public virtual string Piece => "Piece";

    /// <summary>A label.</summary>
    public virtual string PieceCode => "Piece code";

    /// <summary>A label.</summary>
    public virtual string Run => "Run";

    /// <summary>A label.</summary>
    public virtual string Line => "Line";

    /// <summary>A label.</summary>
    public virtual string Row => "Row";

    /// <summary>A label.</summary>
    public virtual string FromTo => "From, to";

    /// <summary>From one post to another.</summary>
    public virtual string FromPostToPost(string first, string last) => $"{first} to {last}";

    /// <summary>A label.</summary>
    public virtual string RopeLabel => "Rope";

    /// <summary>A rope: size and material, and its size on the coil where that was measured.</summary>
    public virtual string RopeName(string material, string diameter, string? measured) =>
        measured is null ? $"{diameter} {material}" : $"{diameter} {material}, measured {measured}";

    /// <summary>A label.</summary>
    public virtual string CutLength => "Cut length";

    /// <summary>A label.</summary>
    public virtual string NetLength => "Net length";

    /// <summary>A label.</summary>
    public virtual string Weight => "Weight";

    /// <summary>A weight in pounds.</summary>
    public virtual string Pounds(string figure) => $"{figure} lb";

    /// <summary>A figure that no table gives.</summary>
    public virtual string NotKnown => "not known";

    /// <summary>A label.</summary>
    public virtual string Coil => "Coil";

    /// <summary>A label.</summary>
    public virtual string PlaceOnCoil => "Place on coil";

    /// <summary>A label.</summary>
    public virtual string TapeFrom => "Tape mark, start";

    /// <summary>A label.</summary>
    public virtual string TapeTo => "Tape mark, end";

    /// <summary>What the tape marks are for: a piece is measured from its own squared end.</summary>
    public virtual string TapeMarksAreForChecking =>
        "Tape marks run along the whole coil from its free end, with the first trim and every kerf counted. They show how far the coil is used: measure the piece itself from its squared end.";

    /// <summary>A label.</summary>
    public virtual string CutBy => "Cut by";

    /// <summary>A label.</summary>
    public virtual string Measured => "Measured after cutting";

    /// <summary>A label.</summary>
    public virtual string DrilledBy => "Drilled by";

    /// <summary>A label.</summary>
    public virtual string CheckedBy => "Checked by";

    /// <summary>Over the end preparation.</summary>
    public virtual string Ends => "Ends";

    /// <summary>Columns of the end preparation.</summary>
    public virtual IReadOnlyList<string> EndColumns => ["End", "At post", "Made as", "Preparation"];

    /// <summary>The end where the run starts.</summary>
    public virtual string Start => "start";

    /// <summary>The end where the run finishes.</summary>
    public virtual string Finish => "finish";

    /// <summary>How an end is prepared, by the rope's fibre and by what the end does at its post.</summary>
    public virtual string EndPreparation(bool natural, AtPostKind kind)
    {
        var cut = natural
            ? "Tape or whip both sides of the mark, then cut cold between."
            : "Hot cut square and seal the strands into one.";
        var then = kind switch
        {
            AtPostKind.Stopped or AtPostKind.Corner => natural
                ? " Keep the binding on and thin enough to enter the bore."
                : " Press the sealed rim round, no thicker than the rope, so that it enters the bore.",
            AtPostKind.Knot => " The tail for the overhand stopper knot is in the cut length.",
            AtPostKind.Wrap => " The turns are in the cut length; the end lies under the last screw.",
            _ => "",
        };
        return cut + then;
    }

    /// <summary>Over the steps.</summary>
    public virtual string Steps => "Steps";

    /// <summary>The steps of cutting a piece.</summary>
    public virtual IReadOnlyList<string> CuttingSteps(bool natural, string cutLength, bool hasCode) =>
    [
        $"Pull the rope off the coil straight along the bench tape, under a light, even tension, without kinks. Square the end, then mark {cutLength} from it.",
        natural
            ? "Tape or whip tightly on both sides of the mark, right up to it."
            : "Tape round the rope at the mark so that the cut runs square.",
        natural
            ? "Cut cold between the bindings with a sharp blade; leave both bindings on."
            : "Cut at the mark with the hot knife; seal the cut face all round and let it cool.",
        "Measure again from end to end under the same tension, and write it above. A short piece goes aside as an offcut of its lot: tell the lead before cutting another.",
        hasCode ? "Put the piece's label on, and read its code against this ticket." : "Tag the piece with job and run.",
        "Coil it without twist, tie in two places, lay it with its job.",
    ];

    /// <summary>Drillings that are set up alike, by their numbers and their kind.</summary>
    public virtual string DrillingsOf(string numbers, string kind) => $"No. {numbers}: {kind}";

    /// <summary>A label.</summary>
    public virtual string Bit => "Bit";

    /// <summary>A label.</summary>
    public virtual string StopCollar => "Stop collar";

    /// <summary>The stop collar of some of the drillings, by their numbers.</summary>
    public virtual string StopCollarOf(string numbers) => $"Stop collar, no. {numbers}";

    /// <summary>A bore's rake.</summary>
    public virtual string RakeOf(string rake) => $"rake: {rake}";

    /// <summary>How deep a bore goes.</summary>
    public virtual string DepthOf(string depth) => $"depth {depth}";

    /// <summary>Over the drillings.</summary>
    public virtual string Drilling => "Drilling, in this order: one bit after the other";

    /// <summary>Columns of the drillings.</summary>
    public virtual IReadOnlyList<string> DrillingColumns =>
        ["No.", "Row", "Face", "Mark from foot", "Mark from top", "Bit", "Stop collar", "Run"];

    /// <summary>Over the screw holes.</summary>
    public virtual string ScrewHoles => "Screw holes";

    /// <summary>Columns of the screw holes.</summary>
    public virtual IReadOnlyList<string> ScrewColumns => ["Height from foot", "Screw", "Face", "Counterbore", "Pilot"];

    /// <summary>Posts round which rope is wrapped and in which nothing is bored.</summary>
    public virtual string WrappedPosts => "Wrapped posts";

    /// <summary>A label.</summary>
    public virtual string PostsLabel => "Posts";

    /// <summary>Over the list of wrapped posts.</summary>
    public virtual string ScrewsOnSite => "Post by post, with the screws that hold the turns";

    /// <summary>Columns of the list of wrapped posts.</summary>
    public virtual IReadOnlyList<string> WrappedPostColumns => ["Done", "Post", "What it is", "Height from foot", "Screws", "Counterbore", "Pilot"];

    /// <summary>A post's height.</summary>
    public virtual string HighPost(string height) => $"{height} high";

    /// <summary>How deep a counterbore goes; a flat head is only countersunk.</summary>
    public virtual string CounterboreDeep(string depth) => Say($"{depth} deep");

    /// <summary>The clearance hole for a lag screw's plain shank.</summary>
    public virtual string ShankHole(string diameter) => Say($"shank {diameter}");

    /// <summary>No hole needed.</summary>
    public virtual string None => "none";

    /// <summary>Steps of drilling a post.</summary>
    public virtual IReadOnlyList<string> DrillingSteps(bool through, bool raked, bool screws)
    {
        var steps = new List<string>
        {
            "Mark which face looks to which post, and the foot, on the post itself. Mark every centre before drilling.",
            "Clamp the post. Set the stop collar from the bit's cutting edge, and drill in the order of the table.",
        };
        if (through)
            steps.Add("Through bores go in from both faces and meet in the middle: the far face stays whole. Turn the post only when all bores of a face and bit are done.");
        if (raked)
            steps.Add("A raked bore follows the ground's slope: set the bevel, start the bit square until it bites, then tilt.");
        if (screws)
            steps.Add("Screw holes come last: counterbore first, then the pilot in its centre.");
        steps.Add("Clear the chips, pass a piece of the rope through every bore, and mark the post.");
        return steps;
    }

    /// <summary>A post with nothing to drill.</summary>
    public virtual string NothingToDrill => "No bores in this post: the rope is wrapped round it. Its screw holes are made on site, through the turns once they are wound, and have no place on the post before; the height is the middle of the turns.";

    /// <summary>Posts with nothing to drill.</summary>
    public virtual string NothingToDrillInThem => "No bores in these posts: the rope is wrapped round them. Their screw holes are made on site, through the turns once they are wound, and have no place on the post before; the height is the middle of the turns.";

    /// <summary>A post's size.</summary>
    public virtual string PostSize => "Post";

    /// <summary>A post's size in words.</summary>
    public virtual string SizeOfPost(string shape, string across) => $"{shape}, {across}";

    /// <summary>A label.</summary>
    public virtual string HeightAboveGround => "Height above ground";

    /// <summary>A label.</summary>
    public virtual string TurnLabel => "Corner";

    /// <summary>Over the list of rope.</summary>
    public virtual string RopeTotals => "Rope to have in stock";

    /// <summary>Columns of the list of rope.</summary>
    public virtual IReadOnlyList<string> RopeTotalColumns => ["Rope", "Pieces", "Total cut length", "Longest piece", "Weight"];

    /// <summary>Over the list of pieces.</summary>
    public virtual string Pieces => "Pieces";

    /// <summary>Columns of the list of pieces.</summary>
    public virtual IReadOnlyList<string> PieceColumns => ["Run", "Code", "From, to", "Rope", "Cut length", "Weight", "Pull at rest"];

    /// <summary>Over the list of screws.</summary>
    public virtual string Screws => "Screws to pick";

    /// <summary>Columns of the list of screws.</summary>
    public virtual IReadOnlyList<string> ScrewTotalColumns => ["Screw", "Count"];

    /// <summary>Over the list of bits.</summary>
    public virtual string Bits => "Bits";

    /// <summary>Columns of the list of bits.</summary>
    public virtual IReadOnlyList<string> BitColumns => ["Bit", "Kind", "Drillings", "On the rack"];

    /// <summary>Yes.</summary>
    public virtual string Yes => "yes";

    /// <summary>No.</summary>
    public virtual string No => "no";

    /// <summary>Over the warnings.</summary>
    public virtual string Warnings => "Look at these before cutting";

    /// <summary>Columns of the warnings.</summary>
    public virtual IReadOnlyList<string> WarningColumns => ["Where", "What"];

    /// <summary>A list that was cut short.</summary>
    public virtual string AndMore(int count) => Say($"and {count} more");

    /// <summary>The foot of a sheet: where it belongs.</summary>
    public virtual string Foot(string job, string what) => what.Length == 0 ? $"Job {job}" : $"Job {job}  ·  {what}";

    /// <summary>A post's name.</summary>
    public virtual string PostName(string mark) => $"Post {mark}";

    /// <summary>A job's name.</summary>
    public virtual string JobName(string number) => $"Job {number}";

    /// <summary>The name of a job that was cancelled.</summary>
    public virtual string CancelledJobName(string number) => $"Job {number}: CANCELLED";

    /// <summary>Across a ticket that a change ended before it was done.</summary>
    public virtual string TicketCancelled => "CANCELLED: a change of the job took this out";

    /// <summary>Across a ticket whose piece or post was made and is no longer wanted.</summary>
    public virtual string TicketSurplus => "SURPLUS: already made, no longer wanted in this form";

    /// <summary>Across each sheet and label of a cancelled job.</summary>
    public virtual string JobCancelled => "CANCELLED: do not cut, drill or send";

    /// <summary>An end on a label: the post and what the end does there.</summary>
    public virtual string LabelEnd(string post, AtPost at, bool natural) =>
        $"{post}: {AtPost(at)}, {(natural ? "bound" : "sealed")}";

    /// <summary>Line and row on a label.</summary>
    public virtual string LabelPlace(string line, string row) => $"Line {line}   Row {row}";

    /// <summary>The run's posts on a label.</summary>
    public virtual string LabelSpan(string first, string last) => $"{first} → {last}";
}
