namespace CutShop.Shop.Orders;

/// <summary>One text field of a part of a draft.</summary>
/// <param name="Name">Its name; that of a field in a group has the group's before it, as <c>rope.diameter</c> or <c>start.eye.pin</c>.</param>
/// <param name="Get">What was typed.</param>
/// <param name="With">The part with another text there.</param>
internal sealed record TextField<T>(string Name, Func<T, string> Get, Func<T, string, T> With);

/// <summary>The fields of one kind of part of a draft, in the order of the form.</summary>
internal sealed class FieldsOf<T>(params IReadOnlyList<TextField<T>> all)
    where T : class, new()
{
    /// <summary>Each field's name after a prefix, with its text.</summary>
    public IEnumerable<KeyValuePair<string, string>> Of(T part, string prefix) => all.Select(field => KeyValuePair.Create(prefix + field.Name, field.Get(part)));

    /// <summary>The text of a field; null where the part has no such field.</summary>
    public string? TextAt(T part, string name) => Find(name)?.Get(part);

    /// <summary>The part with another text in a field; the same part where nothing differs or there is no such field.</summary>
    public T With(T part, string name, string text) => Find(name) is { } field && field.Get(part) != text ? field.With(part, text) : part;

    /// <summary>The same fields as those of a part that holds this one.</summary>
    /// <param name="group">What their names begin with there.</param>
    /// <param name="get">This part of it.</param>
    /// <param name="with">It with another.</param>
    public IEnumerable<TextField<TOuter>> In<TOuter>(string group, Func<TOuter, T> get, Func<TOuter, T, TOuter> with) =>
        all.Select(field => new TextField<TOuter>($"{group}.{field.Name}", outer => field.Get(get(outer)), (outer, text) => with(outer, field.With(get(outer), text))));

    /// <summary>A part that has these texts.</summary>
    public T Filled(IEnumerable<(string Name, string Text)> texts) => texts.Aggregate(new T(), (part, typed) => With(part, typed.Name, typed.Text));

    private TextField<T>? Find(string name) => all.FirstOrDefault(field => field.Name == name);
}
