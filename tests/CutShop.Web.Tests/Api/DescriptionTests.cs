using System.Text;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Routing;
using Microsoft.OpenApi;
using Microsoft.OpenApi.Reader;

namespace CutShop.Web.Tests.Api;

public sealed class DescriptionTests
{
    [Fact]
    public async Task The_description_is_valid_openapi()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var (document, diagnostic) = await ReadAsync(shop);
        Assert.Empty(diagnostic.Errors.Select(error => error.ToString()));
        Assert.Empty(diagnostic.Warnings.Select(warning => warning.ToString()));
        Assert.Empty(document.Validate(ValidationRuleSet.GetDefaultRuleSet()).Select(error => error.ToString()));
        Assert.Equal("bearer", Assert.Single(document.Components!.SecuritySchemes!).Value.Scheme);
    }

    [Fact]
    public async Task Every_route_of_the_api_is_described_and_nothing_else()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var (document, _) = await ReadAsync(shop);
        var described = document.Paths.SelectMany(path => path.Value.Operations!.Keys.Select(method => $"{method.Method} {path.Key}"));
        var routes = shop.Routes.Where(route => route.RoutePattern.RawText!.TrimStart('/').StartsWith("api/", StringComparison.Ordinal))
            .SelectMany(route => route.Metadata.GetMetadata<IHttpMethodMetadata>()!.HttpMethods.Select(method => $"{method} /{route.RoutePattern.RawText!.TrimStart('/')}"))
            .Where(route => route != "GET /api/openapi.json");
        Assert.Equal(routes.Order(StringComparer.Ordinal), described.Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Every_operation_has_a_name_a_summary_and_the_problems_of_a_missing_key()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var (document, _) = await ReadAsync(shop);
        foreach (var operation in document.Paths.SelectMany(path => path.Value.Operations!.Values))
        {
            Assert.False(string.IsNullOrEmpty(operation.OperationId));
            Assert.False(string.IsNullOrEmpty(operation.Summary));
            Assert.Contains("401", operation.Responses!.Keys);
            foreach (var (status, answer) in operation.Responses.Where(pair => pair.Key[0] == '4'))
            {
                var schema = Assert.Single(answer.Content!, media => media.Key == "application/problem+json").Value.Schema!;
                Assert.Contains("problems", schema.Properties!.Keys);
            }
        }
    }

    [Fact]
    public async Task The_examples_are_what_the_shop_takes_and_says()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var (document, _) = await ReadAsync(shop);
        var takeIn = document.Paths["/api/jobs"].Operations![HttpMethod.Post];
        var sheet = document.Paths["/api/jobs/csv"].Operations![HttpMethod.Post];
        var file = takeIn.RequestBody!.Content!["application/json"].Example!.ToJsonString();
        var program = await shop.WithKeyAsync(KeyScope.TakeIn);
        using var bySheet = await program.SendJobAsync(
            Encoding.UTF8.GetBytes(sheet.RequestBody!.Content!["text/csv"].Example!.GetValue<string>()), contentType: "text/csv", address: "/api/jobs/csv");
        Assert.True(JsonNode.DeepEquals(takeIn.Responses!["201"].Content!["application/json"].Example, JsonNode.Parse(await bySheet.TextAsync())));
        using var byFile = await program.SendJobAsync(Encoding.UTF8.GetBytes(file));
        Assert.True(JsonNode.DeepEquals(takeIn.Responses["200"].Content!["application/json"].Example, JsonNode.Parse(await byFile.TextAsync())));
    }

    [Fact]
    public async Task Lists_look_as_they_are_described()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        await shop.TakeInDemoAsync("lq-1042-north-walk.json");
        var (document, _) = await ReadAsync(shop);
        var program = await shop.WithKeyAsync(KeyScope.Read);
        foreach (var (address, list) in new[] { ("/api/jobs", "jobs"), ("/api/changes", "changes") })
        {
            var media = document.Paths[address].Operations![HttpMethod.Get].Responses!["200"].Content!["application/json"];
            var told = (await program.JsonAtAsync(address)).GetProperty(list)[0].EnumerateObject().Select(member => member.Name);
            Assert.Equal(media.Schema!.Properties![list].Items!.Properties!.Keys, told);
            Assert.Equal(media.Example![list]![0]!.AsObject().Select(member => member.Key), told);
        }
    }

    private static async Task<(OpenApiDocument Document, OpenApiDiagnostic Diagnostic)> ReadAsync(RunningShop shop)
    {
        using var answer = await (await shop.WithKeyAsync(KeyScope.Read)).AskAsync("/api/openapi.json");
        await using var stream = await answer.Content.ReadAsStreamAsync(TestContext.Current.CancellationToken);
        var result = await OpenApiDocument.LoadAsync(stream, "json", cancellationToken: TestContext.Current.CancellationToken);
        return (result.Document!, result.Diagnostic!);
    }
}
