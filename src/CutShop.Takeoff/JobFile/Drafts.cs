using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;

namespace CutShop.Takeoff.JobFile;

// What has been read of a job file so far. A null is a field that was missing or wrong and has been reported,
// so that a later check leaves it alone and everything else is still checked. The fields are kept to report on.

internal sealed record PostDraft(JsonFields Fields, string? Mark, PostShape? Shape, Length? Across, Length? Height, Turn? Turn);

internal sealed record SectionDraft(JsonFields Fields, SpacingKind? Spacing, Length? Width, Length? Rise, HangDraft Hang);

/// <summary>A hang that may be absent (not given), or given but wrong (no value).</summary>
internal readonly record struct HangDraft(bool IsGiven, Hang? Value);

internal sealed record RowDraft(
    JsonFields Fields, string? Mark, Length? Height, HangDraft Hang, IReadOnlyList<Treatment?> Treatments, Rope? OwnRope, bool HasOwnRope);

internal sealed record LineDraft(
    JsonFields Fields, string? Mark, IReadOnlyList<PostDraft> Posts, IReadOnlyList<SectionDraft> Sections, IReadOnlyList<RowDraft> Rows);
