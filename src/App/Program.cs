using Ramwright.App.Web;

var app = WebHost.Build(new ServeOptions { DataFolder = Path.Combine(Path.GetTempPath(), "ramwright-data"), Demo = true });
await app.RunAsync();
return 0;
