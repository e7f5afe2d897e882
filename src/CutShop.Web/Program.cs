WebApplication.Create(args).Run();
