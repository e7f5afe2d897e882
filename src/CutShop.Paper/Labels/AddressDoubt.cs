namespace CutShop.Paper.Labels;

/// <summary>What may be wrong with the address on labels, although a code can hold it.</summary>
public enum AddressDoubt
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>It leads to the very machine that opens it: no phone reaches the shop by it.</summary>
    ThisMachineOnly,

    /// <summary>It is not encrypted: others on the network can read along, and phones keep no pages for when there is no signal.</summary>
    NotSecure,
}
