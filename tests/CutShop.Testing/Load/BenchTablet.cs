using System.Text.Json;
using CutShop.Testing.Trust;

namespace CutShop.Testing.Load;

/// <summary>A tablet at the cut bench: asks for the next piece, opens it, ticks each step, enters the length.</summary>
internal sealed class BenchTablet(Uri site, int number, TimeSpan between, LoadNotes notes, string name, string password)
    : LoadClient(site, number, between, notes)
{
    private static readonly string[] Steps = ["step=1", "step=2", $"measured={LoadRun.Measured}", "step=4"];

    private string _token = "";
    private string? _ticket;
    private int _step;

    public override async Task BeginAsync()
    {
        _token = await TokenAsync("/sign-in");
        using var form = Form(("name", name), ("password", password));
        await SendAsync(HttpMethod.Post, "/sign-in", form, isMeasured: false);
        _token = await TokenAsync("/cut");
    }

    protected override async Task StepAsync()
    {
        if (_ticket is null)
        {
            await TakeAsync();
            return;
        }
        var parts = Steps[_step].Split('=');
        if (await TapAsync($"{_ticket}?handler={(parts[0] == "step" ? "Tick" : "Measure")}", (parts[0], parts[1])) is null)
            return;
        if (++_step < Steps.Length)
            return;
        Notes.Cut.Add(_ticket);
        _ticket = null;
        await SendAsync(HttpMethod.Get, "/cut");
    }

    private async Task TakeAsync()
    {
        if (await TapAsync("/cut?handler=Next") is not { } ticket)
            return;
        if (!Notes.Claims.TryAdd(ticket, name))
            Notes.GivenTwice.Enqueue($"{ticket} was given to {Notes.Claims[ticket]} and to {name}");
        (_ticket, _step) = (ticket, 0);
        await SendAsync(HttpMethod.Get, ticket);
    }

    /// <summary>Where the page goes on to, or null where the tap was refused.</summary>
    private async Task<string?> TapAsync(string address, params (string, string)[] fields)
    {
        using var form = Form([("key", Guid.NewGuid().ToString("N")), .. fields]);
        var body = await SendAsync(HttpMethod.Post, address, form);
        if (body.Length == 0 || body[0] != '{')
            return null;
        using var json = JsonDocument.Parse(body);
        if (json.RootElement.GetProperty("problem").GetString() is not { } problem)
            return json.RootElement.GetProperty("to").GetString();
        Notes.Errors.Enqueue($"{name} at {address}: {problem}");
        return null;
    }

    private FormUrlEncodedContent Form(params (string Name, string Value)[] fields) =>
        new([new(PageText.TokenField, _token), .. fields.Select(field => KeyValuePair.Create(field.Name, field.Value))]);

    private async Task<string> TokenAsync(string page) => PageText.TokenIn(await SendAsync(HttpMethod.Get, page, isMeasured: false));
}
