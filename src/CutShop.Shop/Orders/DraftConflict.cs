namespace CutShop.Shop.Orders;

/// <summary>A field in which two people's drafts differ.</summary>
/// <param name="Field">The field.</param>
/// <param name="Theirs">What is stored; null where the field is not in it.</param>
/// <param name="Mine">What was sent; null where the field is not in it.</param>
/// <param name="ChangedByMe">True where the sender changed it.</param>
/// <param name="ChangedByThem">True where the other changed it; both are true where that cannot be known.</param>
public sealed record FieldChoice(string Field, string? Theirs, string? Mine, bool ChangedByMe, bool ChangedByThem);

/// <summary>A draft that two people changed at once.</summary>
/// <param name="Fields">The fields that differ, in the order of the form.</param>
/// <param name="SameShape">True where both have the same lines, posts and rows, so that each field can be chosen by itself.</param>
public sealed record DraftConflict(IReadOnlyList<FieldChoice> Fields, bool SameShape)
{
    /// <summary>Holds two drafts against each other and against what both started from.</summary>
    /// <param name="started">What the sender started from, or null where it is no longer kept.</param>
    /// <param name="theirs">What is stored.</param>
    /// <param name="mine">What was sent.</param>
    public static DraftConflict Between(DraftForm? started, DraftForm theirs, DraftForm mine)
    {
        var before = started is null ? null : DraftFields.Of(started).ToDictionary();
        var stored = DraftFields.Of(theirs).ToDictionary();
        var sent = DraftFields.Of(mine).ToDictionary();
        var choices = new List<FieldChoice>();
        foreach (var field in DraftFields.Of(theirs).Concat(DraftFields.Of(mine)).Select(field => field.Key).Distinct())
        {
            var (their, my) = (stored.GetValueOrDefault(field), sent.GetValueOrDefault(field));
            if (their == my)
                continue;
            var old = before?.GetValueOrDefault(field);
            choices.Add(new(field, their, my, before is null || my != old, before is null || their != old));
        }
        return new(choices, choices.All(choice => choice is { Theirs: not null, Mine: not null }));
    }

    /// <summary>The sender's draft with the other's text in the chosen fields.</summary>
    public static DraftForm Merge(DraftForm theirs, DraftForm mine, IReadOnlySet<string> fieldsOfTheirs) =>
        DraftFields.With(mine, DraftFields.Of(theirs).Where(field => fieldsOfTheirs.Contains(field.Key)));
}
