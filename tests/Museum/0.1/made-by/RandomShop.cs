using System.Globalization;
using CutShop.Shop;
using CutShop.Takeoff;

namespace CutShop.Museum;

/// <summary>Another shop: jobs of random shape with random work done. A step that the shop refuses is left out.</summary>
internal sealed class RandomShop(WorkingShop shop, GonePages gone, int seed)
{
    private readonly Random _chance = new(seed);

    public List<(string Who, string Address)> Views { get; } = [];

    public async Task PlayAsync()
    {
        var people = new Shop.People(shop.Database);
        foreach (var (name, role) in new[] { (MuseumSite.Owner, Role.Owner), ("Dee", Role.Desk), ("Cai", Role.Cutter), ("Cleo", Role.Cutter), ("Dov", Role.Driller), ("Dag", Role.Driller) })
            WorkingShop.Done((await people.AddAsync(name, role, MuseumSite.Password, "Ada")).Problem?.Text);
        foreach (var (material, diameter) in Kinds)
        {
            await shop.HangAsync(material, diameter, $"L{_chance.Next(100, 999)}", "600 ft", "rack 1");
            await shop.HangAsync(material, diameter, $"L{_chance.Next(100, 999)}", "600 ft", "rack 1");
        }
        var numbers = Enumerable.Range(1, 26).Select(i => string.Create(CultureInfo.InvariantCulture, $"R-{3000 + i}")).ToList();
        foreach (var number in numbers)
        {
            await shop.TakeInAsync(MuseumJobs.Random(number, _chance));
            if (number.EndsWith('3'))
                await new RackOfBits(shop.Database, shop.Tables).TakeOffAsync(shop.Tables.Current().Rack.Bits[_chance.Next(shop.Tables.Current().Rack.Bits.Count)], "Ada");
        }
        await PlanAsync();
        foreach (var number in numbers)
        {
            await WorkAsync(number);
            if (_chance.Next(4) == 0)
                await ChangeAsync(number);
            else if (_chance.Next(6) == 0)
                await shop.Release.CancelAsync(number, "no longer wanted", "Dee");
        }
        await PlanAsync();
        foreach (var number in numbers)
            await WorkAsync(number);
    }

    private static IEnumerable<(RopeMaterial Material, string Diameter)> Kinds =>
        from material in new[] { RopeMaterial.Polypropylene, RopeMaterial.Manila } from diameter in new[] { "1 1/2 in", "1 1/4 in" } select (material, diameter);

    private async Task PlanAsync()
    {
        foreach (var (material, diameter) in Kinds)
        {
            try
            {
                await shop.PlanAsync(WorkingShop.Kind(material, diameter));
            }
            catch (InvalidOperationException e)
            {
                Console.WriteLine(e.Message);
            }
        }
    }

    private async Task WorkAsync(string number)
    {
        foreach (var piece in shop.Job(number).Pieces)
        {
            var who = _chance.Next(2) == 0 ? "Cai" : "Cleo";
            switch (_chance.Next(5))
            {
                case 0:
                    await shop.TryAsync(shop.Cut.RecordCutAsync(piece.Code, who, shop.Key()));
                    break;
                case 1 when await shop.TryAsync(shop.Cut.RecordCutAsync(piece.Code, who, shop.Key())):
                    await shop.TryAsync(shop.Packing.PackAsync(number, piece.Code, who, shop.Key()));
                    break;
                case 2 when await shop.TryAsync(shop.Cut.RecordCutAsync(piece.Code, who, shop.Key())):
                    await shop.TryAsync(shop.Cut.RejectAsync(piece.Code, "a knot in the rope", who, shop.Key()));
                    break;
                case 3 when shop.Cut.Of(who) is null:
                    await shop.TryAsync(shop.Cut.TakeAsync(piece.Code, who, shop.Key()));
                    await shop.TryAsync(shop.Cut.TickAsync(piece.Code, CutStep.PullAndMark, who, shop.Key()));
                    break;
                default:
                    break;
            }
        }
        foreach (var post in new JobNews(shop.Database).DrillTickets(number).Select(ticket => ticket.Post))
        {
            var who = _chance.Next(2) == 0 ? "Dov" : "Dag";
            if (_chance.Next(3) > 0 || shop.Drill.Of(who) is not null || !await shop.TryAsync(shop.Drill.TakeAsync(number, post, who, shop.Key())))
                continue;
            var work = shop.Drill.Find(number, post)!;
            for (var step = (int)work.Steps + 1; step <= work.All; step++)
                await shop.TryAsync(shop.Drill.TickAsync(number, post, step, who, shop.Key()));
            if (_chance.Next(5) > 0)
                await shop.TryAsync(shop.Drill.FitsAsync(number, post, who, shop.Key()));
            else
                await shop.TryAsync(shop.Drill.DamageAsync(number, post, "split", who, shop.Key()));
        }
    }

    private async Task ChangeAsync(string number)
    {
        await gone.KeepAsync(number);
        try
        {
            await shop.ChangeAsync(number, form => _chance.Next(4) switch
            {
                0 => DraftEdits.AddPost(form, 0, form.Lines[0].Posts.Count - 1),
                1 when form.Lines[0].Posts.Count > 2 => DraftEdits.RemovePost(form, 0, form.Lines[0].Posts.Count - 1),
                2 => DraftEdits.DuplicateLine(form, 0),
                _ => form with { Lines = [form.Lines[0] with { Sections = [form.Lines[0].Sections[0] with { Width = "75 1/4 in" }, .. form.Lines[0].Sections.Skip(1)] }, .. form.Lines.Skip(1)] },
            });
        }
        catch (InvalidOperationException e)
        {
            Console.WriteLine(e.Message);
        }
        await gone.FindAsync(number);
    }
}
