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
    private const string SpareScrews = "bench spare screws percent";
    private const int LongestHandBack = 24 * 60;
    private const int LongestShift = 7 * 24;
    private const int MostSpareScrews = 100;

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
        CheckNumber(nameof(typed.HandBackMinutes), typed.HandBackMinutes, 1, LongestHandBack);
        CheckNumber(nameof(typed.ShiftHours), typed.ShiftHours, 1, LongestShift);
        CheckNumber(nameof(typed.SpareScrews), typed.SpareScrews, 0, MostSpareScrews);
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
                    (ShiftHours, typed.ShiftHours.Trim()),
                    (SpareScrews, typed.SpareScrews.Trim()));
                return who;
            },
            cancel).ConfigureAwait(false);
        return [];

        void CheckLength(string field, string text)
        {
            var parsed = LengthText.Parse(text.Trim());
            if (!parsed.IsGood)
                problems.Add(new(field, text, parsed.Reason!));
            else if (parsed.Value > LargestTolerance)
                problems.Add(new(field, text, SettingsReplies.Of("AtMost", LargestTolerance)));
        }

        void CheckNumber(string field, string text, int least, int most)
        {
            if (!int.TryParse(text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var number) || number < least || number > most)
                problems.Add(new(field, text, SettingsReplies.Of("WholeNumber", least, most)));
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
            stored.TryGetValue(ShiftHours, out var hours) ? TimeSpan.FromHours(int.Parse(hours, CultureInfo.InvariantCulture)) : standard.Shift,
            stored.TryGetValue(SpareScrews, out var percent) ? int.Parse(percent, CultureInfo.InvariantCulture) : standard.SpareScrews);
    }
}
