using System.Collections.Concurrent;
using System.Diagnostics.Metrics;
using CutShop.Testing.Stores;

namespace CutShop.Shop.Tests.Store;

public sealed class ShopMeterTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_is_stored_is_counted_once_and_what_is_not_stored_is_not()
    {
        using var shop = new ShopOnDisk();
        using var heard = new Heard(shop.Database.Meter);
        await ManyTickets.FillAsync(shop.Database, tickets: 3, coils: 1, Cancel);
        var bench = new CutBench(shop.Database);
        var code = PieceCode.Parse((await bench.NextAsync("Cai", "next", Cancel)).Outcome).OrThrow();
        for (var sent = 0; sent < 2; sent++)
            Assert.True((await bench.RecordCutAsync(code, "Cai", "cut", Cancel)).IsDone);
        Assert.False((await bench.RecordCutAsync(code, "Cai", "cut once more", Cancel)).IsDone);
        Assert.Equal(1, heard.Of("cutshop.pieces.cut"));
        Assert.Equal(1, heard.Of("cutshop.taps.refused"));

        shop.Database.BeforeEachWrite = () => throw new IOException("the disk is gone");
        await Assert.ThrowsAsync<IOException>(() => bench.NextAsync("Cai", "next again", Cancel));
        Assert.Equal(1, heard.Of("cutshop.pieces.cut"));
        Assert.True(heard.Waits >= 5);
    }

    /// <summary>What one shop's meter tells.</summary>
    private sealed class Heard : IDisposable
    {
        private readonly MeterListener _listener = new();
        private readonly ConcurrentDictionary<string, long> _counts = new();
        private int _waits;

        public Heard(ShopMeter meter)
        {
            _listener.InstrumentPublished = (instrument, listener) =>
            {
                if (instrument.Meter == meter.Source)
                    listener.EnableMeasurementEvents(instrument);
            };
            _listener.SetMeasurementEventCallback<long>((instrument, value, _, _) => _counts.AddOrUpdate(instrument.Name, value, (_, sum) => sum + value));
            _listener.SetMeasurementEventCallback<double>((_, _, _, _) => Interlocked.Increment(ref _waits));
            _listener.Start();
        }

        public int Waits => _waits;

        public long Of(string name) => _counts.GetValueOrDefault(name);

        public void Dispose() => _listener.Dispose();
    }
}
