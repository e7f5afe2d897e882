using CutShop.Paper.Labels;
using CutShop.Paper.Sheets;
using CutShop.Paper.Tickets;
using CutShop.Paper.Words;
using CutShop.Shop.Benches;
using CutShop.Shop.Jobs;
using CutShop.Shop.Site;
using CutShop.Shop.Store;
using CutShop.Web.Shared;

namespace CutShop.Web.Benches;

/// <summary>A job's packing list from what the shop has stored, with the code that leads to its site pack.</summary>
public sealed class PackingPaper(PackingBench packing, JobShelf jobs, SitePackShelf packs, LabelAddress label, SendingSettingsShelf sending)
{
    /// <summary>The list, or null where there is nothing to pack for this job.</summary>
    /// <param name="number">The job's number.</param>
    /// <param name="who">Who prints it.</param>
    /// <param name="settings">Units and words.</param>
    /// <param name="cancel">Stops.</param>
    public async Task<Sheet?> OfAsync(string number, string who, PaperSettings settings, CancellationToken cancel)
    {
        if (packing.Find(number) is not { } parcel || jobs.Find(number) is not { } job || await packs.CodeOfAsync(number, who, cancel) is not { } pack)
            return null;
        var address = PieceAddress.OfPack(label.Now.ToString(), pack);
        var list = PackingList.Of(
            job.Takeoff.Job,
            [.. parcel.Pieces.Zip(job.Takeoff.Pieces, (stored, piece) => new PackedPiece(piece, stored.Code, stored.Measured, stored.Lot ?? "", stored.IsPacked) { Parcel = (int)(stored.Parcel ?? 1) })],
            [.. parcel.Posts.Select(post => new PackedPost(post.Mark, post.IsDrilled, post.IsIn))],
            [.. parcel.Screws.Select(screws => new PackedScrews(screws.Screw, screws.Needed, screws.Spare, screws.IsIn))],
            [.. parcel.Hardware.Select(hardware => new PackedHardware(hardware.What, hardware.Needed, hardware.IsIn))],
            address.IsGood ? address.Value : null,
            settings with { IsForSalt = sending.Current.IsForSalt });
        return parcel.IsCancelled ? list with { Stamp = settings.Text["JobCancelled"] } : list;
    }
}
