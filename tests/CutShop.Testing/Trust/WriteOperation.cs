namespace CutShop.Testing.Trust;

/// <summary>A public operation of the shop that writes.</summary>
/// <param name="Name">Its class and method.</param>
/// <param name="Prepare">Brings the shop to where it can be done.</param>
/// <param name="Do">Does it; true where it is done.</param>
internal sealed record WriteOperation(string Name, Func<FaultShop, Task> Prepare, Func<FaultShop, Task<bool>> Do);
