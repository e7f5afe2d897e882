using CsCheck;

namespace CutShop.Shop.Tests.Benches;

/// <summary>Random work at the drill bench against the plainest model: a state, a count of drillings and screw holes, a name.</summary>
public sealed class DrillTicketModelTests
{
    private static readonly string[] Posts = ["A1", "A2"];
    private static readonly string[] People = ["Dov", "Eva"];

    /// <summary>Every deed, and often enough those that finish a post for it to be undone.</summary>
    private static readonly Gen<Deed> Deeds = Gen.Frequency((1, Gen.Enum<Deed>()), (1, Gen.OneOf(Gen.Const(Deed.Next), Gen.Const(Deed.Tick), Gen.Const(Deed.Fits), Gen.Const(Deed.FitsLikeLast))));

    private enum Deed
    {
        Next,
        Take,
        Tick,
        TickScrewHole,
        Fits,
        Damage,
        NewPost,
        HandBack,
        TakeOver,
        Undo,
        Untick,
        HandBackUndrilled,
        FitsLikeLast,
        UndoDamage,
    }

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Whatever_is_done_in_whatever_order_the_states_are_as_the_model_says()
    {
        var done = new HashSet<Deed>();
        await Gen.Select(Deeds, Gen.Int[0, 1], Gen.Int[0, 1]).Array[60, 120].SampleAsync(
            async deeds =>
            {
                using var shop = new PlannedShop();
                await shop.TakeInAsync("LQ-1", "100");
                var model = Posts.ToDictionary(post => post, _ => new Ticket());
                var damages = new List<Damage>();
                var clock = 0;
                foreach (var (deed, post, person) in deeds)
                {
                    shop.Shop.Time.Advance(TimeSpan.FromSeconds(1));
                    var (ticket, who, mark) = (model[Posts[post]], People[person], Posts[post]);
                    var mine = model.Values.SingleOrDefault(other => other.Who == who);
                    var isHis = ticket.State == "at the bench" && ticket.Who == who;
                    var (allowed, answer) = deed switch
                    {
                        Deed.Next => (mine is not null || model.Values.Any(other => other.State == "waiting"), await shop.Drill.NextAsync(who, shop.Key(), Cancel)),
                        Deed.Take => (ticket.State == "waiting" && mine is null, await shop.Drill.TakeAsync(("LQ-1", mark), who, shop.Key(), Cancel)),
                        Deed.Tick => (isHis && ticket.Steps == 0, await shop.Drill.TickAsync(("LQ-1", mark), 1, who, shop.Key(), Cancel)),
                        Deed.TickScrewHole => (isHis && ticket.Steps == 1, await shop.Drill.TickAsync(("LQ-1", mark), 2, who, shop.Key(), Cancel)),
                        Deed.Fits => (isHis && ticket.Steps >= 1, await shop.Drill.FitsAsync(("LQ-1", mark), who, shop.Key(), Cancel)),
                        Deed.Damage => (ticket.State is "at the bench" or "drilled", await shop.Drill.DamageAsync(("LQ-1", mark), "split", who, shop.Key(), Cancel)),
                        Deed.NewPost => (ticket.State == "re-ordered", await shop.Drill.NewPostAsync(("LQ-1", mark), who, shop.Key(), Cancel)),
                        Deed.HandBack => (ticket.State == "at the bench", await shop.Drill.HandBackAsync(("LQ-1", mark), who, shop.Key(), Cancel)),
                        Deed.TakeOver => (ticket.State == "at the bench" && (mine ?? ticket) == ticket, await shop.Drill.TakeOverAsync(("LQ-1", mark), who, shop.Key(), Cancel)),
                        Deed.Untick => (isHis && ticket.Steps > 0, await shop.Drill.UntickAsync(("LQ-1", mark), (int)ticket.Steps, who, shop.Key(), Cancel)),
                        Deed.HandBackUndrilled => (isHis, await shop.Drill.HandBackUndrilledAsync(("LQ-1", mark), who, shop.Key(), Cancel)),
                        Deed.FitsLikeLast => (isHis && model.Values.Any(other => IsSetUpFor(other, who, damages)), await shop.Drill.FitsLikeLastAsync(("LQ-1", mark), who, shop.Key(), Cancel)),
                        Deed.UndoDamage => (ticket.State == "re-ordered" && (mine ?? ticket) == ticket, await shop.Drill.UndoDamageAsync(("LQ-1", mark), who, shop.Key(), Cancel)),
                        _ => (ticket.State == "drilled", await shop.Drill.UndoAsync(("LQ-1", mark), "a slip", who, shop.Key(), Cancel)),
                    };
                    Assert.Equal(allowed, answer.IsDone);
                    if (allowed)
                    {
                        done.Add(deed);
                        Apply(deed, deed == Deed.Next ? model[answer.Outcome.Split('/')[1]] : ticket, who, damages, ++clock);
                    }
                    foreach (var (name, expected) in model)
                    {
                        var work = shop.Drill.Find(("LQ-1", name))!;
                        Assert.Equal((expected.State, expected.Steps, expected.Who), (work.State, work.Steps, work.ClaimedBy));
                    }
                    Assert.Equal(damages.Count, shop.Shop.Count("damages"));
                    Assert.Empty(shop.WrongCounts());
                }
            },
            iter: 30,
            threads: 1);
        Assert.Equal(Enum.GetValues<Deed>(), done.Order());
    }

    /// <summary>Both posts are drilled alike, so whoever drilled one has the drill set up for the other, unless they have spoiled a post since.</summary>
    private static bool IsSetUpFor(Ticket drilled, string who, List<Damage> damages) =>
        drilled.State == "drilled" && drilled.DrilledBy == who && !damages.Exists(damage => damage.Who == who && damage.At > drilled.DrilledAt);

    private static void Apply(Deed deed, Ticket ticket, string who, List<Damage> damages, int now)
    {
        var taken = deed == Deed.UndoDamage ? damages.FindLast(damage => damage.Ticket == ticket) : null;
        if (taken is not null)
            damages.Remove(taken);
        if (deed == Deed.Damage)
            damages.Add(new(ticket, who, ticket.Steps, now));
        if (deed is Deed.Fits or Deed.FitsLikeLast)
            (ticket.DrilledBy, ticket.DrilledAt) = (who, now);
        (ticket.State, ticket.Steps, ticket.Who) = deed switch
        {
            Deed.Next or Deed.Take or Deed.TakeOver => ("at the bench", ticket.Steps, who),
            Deed.Tick => ("at the bench", 1, who),
            Deed.TickScrewHole => ("at the bench", 2, who),
            Deed.Fits or Deed.FitsLikeLast => ("drilled", 2, null),
            Deed.UndoDamage => ("at the bench", taken!.Steps, who),
            Deed.Untick => ("at the bench", ticket.Steps - 1, who),
            Deed.Damage => ("re-ordered", 0, null),
            Deed.HandBack => ("waiting", ticket.Steps, null),
            Deed.NewPost or Deed.Undo or Deed.HandBackUndrilled => ("waiting", 0, (string?)null),
            _ => throw new ArgumentOutOfRangeException(nameof(deed), deed, message: null),
        };
    }

    private sealed record Damage(Ticket Ticket, string Who, long Steps, int At);

    private sealed class Ticket
    {
        public string State { get; set; } = "waiting";

        public long Steps { get; set; }

        public string? Who { get; set; }

        public string? DrilledBy { get; set; }

        public int DrilledAt { get; set; }
    }
}
