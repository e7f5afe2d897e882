using CutShop.Paper;
using CutShop.Shop;

namespace CutShop.Web.Benches;

/// <summary>A job's packing list from what the shop has stored.</summary>
internal static class PackingPaper
{
    public static Sheet Of(JobParcel parcel, StoredJob job, PaperSettings settings) => PackingList.Of(
        job.Takeoff.Job,
        [.. parcel.Pieces.Zip(job.Takeoff.Pieces, (stored, piece) => new PackedPiece(piece, stored.Code, stored.Measured, stored.Lot ?? "", stored.IsPacked))],
        [.. parcel.Posts.Select(post => new PackedPost(post.Mark, post.State == TicketStates.Drilled))],
        settings);
}
