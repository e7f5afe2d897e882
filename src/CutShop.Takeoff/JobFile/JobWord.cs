namespace CutShop.Takeoff.JobFile;

/// <summary>The word by which a job file says something, for forms that are read as one.</summary>
public static class JobWord
{
    /// <summary>Where heights are measured from: top, ground or foot.</summary>
    public static string Of(Datum datum) => JobWords.Datums.Of(datum);

    /// <summary>Raked or level.</summary>
    public static string Of(BoreSlope slope) => JobWords.Slopes.Of(slope);

    /// <summary>Shop or site.</summary>
    public static string Of(BoredBy boring) => JobWords.Borers.Of(boring);

    /// <summary>Left or right.</summary>
    public static string Of(TurnSide side) => JobWords.Sides.Of(side);

    /// <summary>Ends or through.</summary>
    public static string Of(CornerKind corner) => JobWords.Corners.Of(corner);

    /// <summary>Preshrunk, trimmed or hung-long.</summary>
    public static string Of(WettingManner manner) => JobWords.Manners.Of(manner);
}
