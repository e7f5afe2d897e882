namespace CutShop.Testing.Trust;

/// <summary>
/// Gives a stored job the parts that other rules would have made: stopped bores an eighth of an inch less deep, pieces an inch longer. So a
/// test sees a shop as it is after the rules of the program changed.
/// </summary>
public static class OtherRules
{
    /// <summary>How much less deep a stopped bore is by the other rules.</summary>
    public static Length LessDeep { get; } = Length.FromSixtyFourths(8);

    /// <summary>How much longer a piece is by the other rules.</summary>
    public static Length Longer => Length.Inch;

    /// <summary>Makes the parts of a job those of the other rules.</summary>
    public static Task<int> MakeAsync(ShopDatabase database, string number, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(database);
        return database.WriteAsync(
            session =>
            {
                var was = StoredWork.Find(session, number)!;
                foreach (var piece in was.Pieces)
                {
                    var cut = piece.Work.Piece.Cut + Longer;
                    StoredParts.Put(session, piece.Id, piece.Work with { Piece = piece.Work.Piece with { Cut = cut } });
                    session.Execute("UPDATE pieces SET cut_nm = @cut WHERE id = @Id", new { cut, piece.Id });
                }
                foreach (var post in was.Posts)
                    StoredParts.Put(session, post.Id, post.Work with { Bores = [.. post.Work.Bores.Select(Shallower)] });
                var cutInAll = was.Frame.Totals.Cut + (Longer * was.Pieces.Count);
                StoredParts.Put(session, was.JobId, was.Frame with { Totals = was.Frame.Totals with { Cut = cutInAll } });
                return was.Pieces.Count;
            },
            cancel);
    }

    private static Bore Shallower(Bore bore) => bore.Kind != AtPostKind.Stopped ? bore : bore with
    {
        Operations = [.. bore.Operations.Select(operation => operation with { Depth = operation.Depth - LessDeep, Collar = operation.Collar - LessDeep })],
    };
}
