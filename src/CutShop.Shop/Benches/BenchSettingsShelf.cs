using System.Globalization;
using CutShop.Shop.Store;
using CutShop.Takeoff.Lengths;

namespace CutShop.Shop.Benches;

/// <summary>What the shop has set for its benches; what it has not set has its default.</summary>
public sealed class BenchSettingsShelf(ShopDatabase database)
{
    private const string Over = "bench over";
    private const string Under = "bench under";
    private const string HandBackMinutes = "bench hand back minutes";
    private const string ShiftHours = "bench shift hours";
    private const int LongestHandBack = 24 * 60;
    private const int LongestShift = 7 * 24;

    private static readonly Length LargestTolerance = Length.Foot;

    /// <summary>How the benches work.</summary>
    public BenchSettings Current => database.Read(Read);

    /// <summary>Sets how the benches work, from texts as typed.</summary>
    /// <returns>The problems, by field; empty where all is stored.</returns>
    public async Task<IReadOnlyList<FieldProblem>> SetAsync(BenchTyped typed, string who, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(typed);
        var problems = new List<FieldProblem>();
        CheckLength(nameof(typed.Over), typed.Over);
        CheckLength(nameof(typed.Under), typed.Under);
        CheckNumber(nameof(typed.HandBackMinutes), typed.HandBackMinutes, LongestHandBack);
        CheckNumber(nameof(typed.ShiftHours), typed.ShiftHours, LongestShift);
        if (problems.Count > 0)
            return problems;
        await database.WriteAsync(
            session =>
            {
                StoredSettings.Change(
                    session,
                    who,
                    (Over, typed.Over.Trim()),
                    (Under, typed.Under.Trim()),
                    (HandBackMinutes, typed.HandBackMinutes.Trim()),
                    (ShiftHours, typed.ShiftHours.Trim()));
                return who;
            },
            cancel).ConfigureAwait(false);
        return [];

        void CheckLength(string field, string text)
        {
            var parsed = LengthText.Parse(text.Trim());
            if (!parsed.IsGood)
                problems.Add(new(field, text, parsed.Problem!));
            else if (parsed.Value > LargestTolerance)
                problems.Add(new(field, text, SettingsReplies.Say("AtMost", LargestTolerance)));
        }

        void CheckNumber(string field, string text, int most)
        {
            if (!int.TryParse(text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var number) || number < 1 || number > most)
                problems.Add(new(field, text, SettingsReplies.Say("WholeNumber", most)));
        }
    }

    internal static BenchSettings Read(ShopSession session)
    {
        var stored = StoredSettings.All(session);
        var standard = BenchSettings.Default;
        return new(
            stored.LengthOf(Over, standard.Over),
            stored.LengthOf(Under, standard.Under),
            stored.TryGetValue(HandBackMinutes, out var minutes) ? TimeSpan.FromMinutes(int.Parse(minutes, CultureInfo.InvariantCulture)) : standard.HandBackAfter,
            stored.TryGetValue(ShiftHours, out var hours) ? TimeSpan.FromHours(int.Parse(hours, CultureInfo.InvariantCulture)) : standard.Shift);
    }
}
