using System.Text.Json.Nodes;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace CutShop.Web.Api;

/// <summary>Describes the API in OpenAPI: bodies, problems, keys and examples that the routes themselves do not tell.</summary>
internal static class ApiDescription
{
    private const string KeyName = "key";

    /// <summary>Says that a route answers with problems: those of every route, and these.</summary>
    public static RouteHandlerBuilder Tells(this RouteHandlerBuilder route, params int[] statuses)
    {
        foreach (var status in statuses.Concat([401, 403]))
            route.Produces<ApiProblemBody>(status, ApiProblem.ContentType);
        return route;
    }

    /// <summary>Says that a route takes a file of this type, and how that may go wrong.</summary>
    public static RouteHandlerBuilder TakesAndTells(this RouteHandlerBuilder route, string contentType) =>
        route.WithMetadata(new TakesFile(contentType)).Tells(400, 409, 413, 415, 422);

    public static Task Describe(OpenApiDocument document, OpenApiDocumentTransformerContext context, CancellationToken cancel)
    {
        document.Info = new OpenApiInfo
        {
            Title = "CutShop",
            Version = typeof(ApiDescription).Assembly.GetName().Version!.ToString(2),
            Description = HostWords.Say("ApiAbout"),
        };
        // The site may stand behind another address than it listens on.
        document.Servers = [new OpenApiServer { Url = "/" }];
        document.Components ??= new OpenApiComponents();
        document.Components.SecuritySchemes = new Dictionary<string, IOpenApiSecurityScheme>
        {
            [KeyName] = new OpenApiSecurityScheme { Type = SecuritySchemeType.Http, Scheme = "bearer", Description = HostWords.Say("ApiKeyAbout") },
        };
        document.Security = [new OpenApiSecurityRequirement { [new OpenApiSecuritySchemeReference(KeyName, document)] = [] }];
        return Task.CompletedTask;
    }

    public static Task DescribeOperation(OpenApiOperation operation, OpenApiOperationTransformerContext context, CancellationToken cancel)
    {
        if (context.Description.ActionDescriptor.EndpointMetadata.OfType<TakesFile>().SingleOrDefault() is { } file)
            DescribeFile(operation, file);
        foreach (var parameter in (operation.Parameters ?? []).OfType<OpenApiParameter>())
            DescribeParameter(parameter);
        foreach (var (status, answer) in operation.Responses ?? [])
            AddExample(answer, status, operation.OperationId);
        return Task.CompletedTask;
    }

    private static void DescribeFile(OpenApiOperation operation, TakesFile file)
    {
        var isJson = file.ContentType == "application/json";
        operation.RequestBody = new OpenApiRequestBody
        {
            Required = true,
            Description = isJson ? HostWords.Say("ApiJobFile") : HostWords.Say("ApiSheet"),
            Content = new Dictionary<string, OpenApiMediaType>
            {
                [file.ContentType] = new()
                {
                    Schema = new OpenApiSchema { Type = isJson ? JsonSchemaType.Object : JsonSchemaType.String },
                    Example = isJson ? JsonNode.Parse(ApiExamples.JobFile) : JsonValue.Create(ApiExamples.JobSheet),
                },
            },
        };
        operation.Parameters ??= [];
        operation.Parameters.Add(new OpenApiParameter
        {
            Name = "Idempotency-Key",
            In = ParameterLocation.Header,
            Description = HostWords.Say("ApiRequestKey"),
            Schema = new OpenApiSchema { Type = JsonSchemaType.String, MaxLength = 200 },
        });
    }

    private static void DescribeParameter(OpenApiParameter parameter)
    {
        switch (parameter.Name)
        {
            case "since":
                parameter.Description = HostWords.Say("ApiSince");
                parameter.Schema = new OpenApiSchema { Type = JsonSchemaType.Integer, Format = "int64", Minimum = "0" };
                break;
            case "most":
                parameter.Description = HostWords.Say("ApiMost");
                parameter.Schema = new OpenApiSchema { Type = JsonSchemaType.Integer, Format = "int32", Minimum = "1", Maximum = $"{Cursor.MostAtOnce}" };
                break;
            case "number":
                parameter.Description = HostWords.Say("ApiNumber");
                parameter.Example = JsonValue.Create("LQ-1042");
                break;
        }
    }

    private static void AddExample(IOpenApiResponse answer, string status, string? operationId)
    {
        if (answer.Content is { } content && ApiExamples.Of(operationId, status) is { } example)
        {
            foreach (var (_, media) in content.Where(pair => pair.Key.EndsWith("json", StringComparison.Ordinal)))
                media.Example = JsonNode.Parse(example);
        }
    }

    private sealed record TakesFile(string ContentType);
}
