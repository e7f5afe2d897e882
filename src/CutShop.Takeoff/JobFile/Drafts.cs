using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;

namespace CutShop.Takeoff.JobFile;

// What has been read of a job file so far. A null is a field that was missing or wrong and has been reported,
// so that a later check leaves it alone and everything else is still checked.
// Of posts and sections, which are many, only what later checks ask for is kept, and the source's value to report on; and the post or
// section itself, where all of it is right.

internal readonly record struct PostDraft(JobValue Value, string? Mark, Length? Across, Length? Height, bool HasBuried, Post? Post);

internal readonly record struct SectionDraft(JobValue Value, Length? Centres, bool HasHang, Section? Section);

/// <summary>A hang that may be absent (not given), or given but wrong (no value).</summary>
internal readonly record struct HangDraft(bool IsGiven, Hang? Value);

internal sealed record RowDraft(
    Part Part, string? Mark, Length? Height, HangDraft Hang, Treatment?[] Treatments, Rope? OwnRope, bool HasOwnRope);

internal sealed record LineDraft(Part Part, string? Mark, PostDraft[] Posts, SectionDraft[] Sections, RowDraft[] Rows)
{
    public Part PostAt(int index) => new(Posts[index].Value, Part.Place["posts"][index]);

    public Part SectionAt(int index) => new(Sections[index].Value, Part.Place["sections"][index]);
}
