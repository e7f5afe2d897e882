using CutShop.Takeoff.Lengths;

namespace CutShop.Shop.Store;

/// <summary>The rows of what the shop has set: the one place that reads and writes them.</summary>
internal static class StoredSettings
{
    /// <summary>What is set under a name, or null.</summary>
    public static string? Find(ShopSession session, string name) =>
        session.FirstOrDefault<string>("SELECT value FROM settings WHERE name = @name", new { name });

    /// <summary>Everything that is set, by name.</summary>
    public static Dictionary<string, string> All(ShopSession session) =>
        session.All<(string Name, string Value)>("SELECT name, value FROM settings").ToDictionary(pair => pair.Name, pair => pair.Value);

    /// <summary>Sets values, in place of those before.</summary>
    public static void Set(ShopSession session, params (string Name, string Value)[] settings) => session.Execute(
        "INSERT INTO settings (name, value) VALUES (@Name, @Value) ON CONFLICT (name) DO UPDATE SET value = excluded.value",
        settings.Select(pair => new { pair.Name, pair.Value }));

    /// <summary>Sets values as somebody chose them; each that differs is a line of the history.</summary>
    public static void Change(ShopSession session, string who, params (string Name, string Value)[] settings)
    {
        var before = All(session);
        var changed = settings.Where(pair => before.GetValueOrDefault(pair.Name) != pair.Value).ToArray();
        Set(session, changed);
        foreach (var (name, value) in changed)
            session.Record("setting", 0, who, HistoryCodes.SettingSet, before.GetValueOrDefault(name, ""), value, details: new { setting = name });
    }

    /// <summary>Leaves a name unset.</summary>
    public static void Clear(ShopSession session, string name) => session.Execute("DELETE FROM settings WHERE name = @name", new { name });

    /// <summary>A length that is set, or what counts otherwise.</summary>
    public static Length LengthOf(this Dictionary<string, string> settings, string name, Length otherwise) =>
        settings.TryGetValue(name, out var text) ? LengthText.Parse(text).OrThrow() : otherwise;
}
