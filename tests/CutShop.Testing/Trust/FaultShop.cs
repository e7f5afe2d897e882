using System.Globalization;
using CutShop.Testing.Jobs;

namespace CutShop.Testing.Trust;

/// <summary>
/// A shop with something of everything, to break writes in: job LQ-1 planned and waiting, LQ-3 received, a draft with a quote,
/// coils, people, a tablet, a key.
/// </summary>
internal sealed class FaultShop : IDisposable
{
    public const string Password = "rope and timber 42";
    public const string Pin = "7052";

    private static readonly RopeKind Poly = new(RopeMaterial.Polypropylene, Inches("1 1/2"), RopeKind.ThreeStrand);
    private static readonly PlanBudget Budget = new(TimeSpan.FromSeconds(10), UseSolver: false);

    /// <summary>Filled once, since passwords are hashed slowly; each shop is a copy.</summary>
    private static readonly Lazy<Task<byte[]>> Filled = new(FillAsync);

    private readonly string _folder = Directory.CreateTempSubdirectory("cutshop-faults-").FullName;
    private int _key;

    private FaultShop(byte[]? database)
    {
        var path = ShopFolder.DatabaseIn(_folder);
        if (database is not null)
            File.WriteAllBytes(path, database);
        Database = ShopDatabase.Open(path, TimeProvider.System);
    }

    public ShopDatabase Database { get; }

    public ShopTablesShelf Tables => new(Database, ShopTables.Standard);

    public CutBench Cut => new(Database);

    public DrillBench Drill => new(Database);

    public PackingBench Packing => new(Database);

    public CutPlanDesk Plans => new(Database);

    public CoilShelf Stock => new(Database);

    public WettingShelf Wetting => new(Database);

    public DraftShelf Drafts => new(Database);

    public PeopleShelf People => new(Database);

    /// <summary>The piece of LQ-1.</summary>
    public PieceCode Code { get; private set; }

    /// <summary>The row of Ada, an owner.</summary>
    public long Ada { get; private set; }

    /// <summary>The row of Cai, a cutter with a PIN.</summary>
    public long Cai { get; private set; }

    /// <summary>An open draft of a new job.</summary>
    public long Draft { get; private set; }

    /// <summary>What a preparation keeps for its operation: a row, a token.</summary>
    public string Kept { get; set; } = "";

    /// <summary>The row that <see cref="Kept"/> is.</summary>
    public long KeptId => long.Parse(Kept, CultureInfo.InvariantCulture);

    public static RopeKind Rope => Poly;

    public static Length Inches(string number) => LengthText.Parse(number + " in").OrThrow();

    public static PriceList Prices(DateOnly from) => new(
        0,
        from,
        [new(RopeMaterial.Polypropylene, Inches("1 1/2"), Money.Parse("2.125").OrThrow())],
        [new(Inches("2 1/4"), Money.Parse("4.25").OrThrow())],
        Money.Parse("4.50").OrThrow(),
        Money.Parse("35").OrThrow(),
        Money.Parse("120").OrThrow(),
        Share.Parse("6.25%").OrThrow(),
        QuoteDays: 30);

    public static async Task<FaultShop> MakeAsync()
    {
        var shop = new FaultShop(await Filled.Value);
        shop.Code = new JobShelf(shop.Database).Find("LQ-1")!.Pieces[0].Code;
        (shop.Ada, shop.Cai) = (shop.People.Find("Ada")!.Id, shop.People.Find("Cai")!.Id);
        shop.Draft = shop.Drafts.Open()[0].Id;
        return shop;
    }

    private static async Task<byte[]> FillAsync()
    {
        using var shop = new FaultShop(database: null);
        await shop.People.AddAsync("Ada", Role.Owner, Password, "test");
        var cai = await shop.People.AddAsync("Cai", Role.Cutter, Password, "test");
        await shop.People.SetPinAsync(cai.Id, Pin, "test");
        await shop.Stock.ReceiveAsync(new(Poly, "L1", Length.Foot * 50, "rack 1"), "Ada", "a coil");
        await new JobIntake(shop.Database, ShopTables.Standard).TakeInAsync(SmallJobs.OnePiece("LQ-1"), "Ada");
        await shop.Plans.AcceptAsync(await shop.DraftPlanAsync(), "Ada");
        await new PriceBook(shop.Database).KeepAsync(Prices(new(2020, 1, 1)), "Ada", "prices");
        var received = await shop.Drafts.StartAsync(SmallJobs.FourPosts("LQ-3"), "Ada", "received");
        await new DraftIntake(shop.Database, shop.Tables).TakeInAsync(received, version: 1, "Ada");
        await shop.Drafts.StartAsync(SmallJobs.FourPosts("LQ-2"), "Ada", "open");
        var copy = new ShopBackups(shop.Database.Path, ShopFolder.BackupsIn(shop._folder), TimeProvider.System).Make(keep: null);
        return await File.ReadAllBytesAsync(copy.File.Path);
    }

    /// <summary>A key that no request had before.</summary>
    public string Key() => string.Create(CultureInfo.InvariantCulture, $"before {++_key}");

    public async Task<long> DraftPlanAsync() => (await Plans.DraftAsync(Poly, dueBy: null, Budget, "Ada")).PlanId;

    /// <summary>Hangs up a coil of new manila, K0002.</summary>
    public Task HangManilaAsync() => Stock.ReceiveAsync(new(Poly with { Material = RopeMaterial.Manila }, "M1", Length.Foot * 50, "rack 2"), "Ada", Key());

    /// <summary>Takes the piece to the bench and ticks as many steps as are to be done before one.</summary>
    public async Task CutUpToAsync(CutStep next)
    {
        await Cut.TakeAsync(Code, "Cai", Key());
        for (var step = CutStep.Mark; step < next; step++)
            _ = step == CutStep.Measure ? await Cut.MeasureAsync(Code, Inches("77 1/2"), isSure: false, "Cai", Key()) : await Cut.TickAsync(Code, step, "Cai", Key());
    }

    /// <summary>Cuts the piece and finishes it.</summary>
    public Task FinishCutAsync() => Cut.RecordCutAsync(Code, "Cai", Key());

    /// <summary>Cuts the piece and then cancels its job.</summary>
    public async Task SurplusAsync()
    {
        await FinishCutAsync();
        await new JobRelease(Database).CancelAsync("LQ-1", "no longer wanted", "Ada");
    }

    /// <summary>Takes post A1 to the bench, bores it and, where asked, finishes it.</summary>
    public async Task DrillAsync(bool finish)
    {
        await Drill.TakeAsync(("LQ-1", "A1"), "Dov", Key());
        await Drill.TickAsync(("LQ-1", "A1"), 1, "Dov", Key());
        if (finish)
            await Drill.FitsAsync(("LQ-1", "A1"), "Dov", Key());
    }

    /// <summary>A shop with no person in it yet.</summary>
    public Task<int> SendEverybodyAwayAsync() => Database.WriteAsync(session =>
    {
        session.Execute("UPDATE actors SET name = (SELECT name FROM people WHERE people.id = person_id), person_id = NULL WHERE person_id IS NOT NULL");
        return session.Execute("DELETE FROM people");
    });

    public void Dispose()
    {
        Database.BeforeEachWrite = null;
        Database.Dispose();
        Directory.Delete(_folder, recursive: true);
    }
}
