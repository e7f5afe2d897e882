namespace CutShop.Takeoff.Tables;

/// <summary>Kinds of bit for a rope's bore.</summary>
public enum BitKind
{
    /// <summary>A Forstner bit with a threaded point: clean, flat-bottomed, pulls itself in.</summary>
    ThreadedForstner,

    /// <summary>A spade bit.</summary>
    Spade,

    /// <summary>A hole saw, which leaves a slug.</summary>
    HoleSaw,
}
