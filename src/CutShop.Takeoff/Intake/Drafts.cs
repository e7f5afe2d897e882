using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;

namespace CutShop.Takeoff.Intake;

// What has been read of a job file so far. A null is a field that was missing or wrong and has been reported,
// so that a later check leaves it alone and everything else is still checked.
// Of posts and sections, which are many, only what later checks ask for is kept, and the source's value to report on; and the post or
// section itself, where all of it is right.

internal readonly record struct PostDraft(JobValue Value, string? Mark, Length? Across, Length? Height, bool HasBuried, Post? Post);

internal readonly record struct SectionDraft(JobValue Value, Length? Centres, bool HasHang, Section? Section)
{
    public Length? Rise => Section?.Rise;
}

/// <summary>A hang that may be absent (not given), or given but wrong (no value).</summary>
internal readonly record struct HangDraft(bool IsGiven, Hang? Value);

internal sealed record RowDraft(
    Part Part,
    string? Mark,
    Length? Height,
    HangDraft Hang,
    Treatment?[] Treatments,
    Rope? OwnRope,
    bool HasOwnRope,
    IReadOnlyDictionary<string, Length>? Heights,
    BoreSlope? Bore,
    bool IsUnbroken)
{
    /// <summary>Its height at a post, as far as it is known.</summary>
    public Length? HeightAt(PostDraft post) =>
        Mark is not null && post.Post?.Holes?.ByRow.GetValueOrDefault(Mark)?.Height is { } hole ? hole
        : Heights is not null && post.Mark is not null && Heights.TryGetValue(post.Mark, out var height) ? height
        : Height;
}

internal sealed record LineDraft(Part Part, string? Mark, PostDraft[] Posts, SectionDraft[] Sections, RowDraft[] Rows, bool IsClosed, Curve? Curve, Length? Drop, BoredBy? Boring)
{
    /// <summary>The post at a station; a closed line comes to the first once more.</summary>
    public PostDraft At(int station) => Posts[station % Posts.Length];

    /// <summary>True where the line's course is known: as many sections as its posts need.</summary>
    public bool HasItsSections => Sections.Length == (IsClosed ? Posts.Length : Posts.Length - 1);

    public Part PostAt(int index) => new(Posts[index].Value, Part.Place["posts"][index]);

    public Part SectionAt(int index) => new(Sections[index].Value, Curve is null ? Part.Place["sections"][index] : Part.Place["curve"]);
}
