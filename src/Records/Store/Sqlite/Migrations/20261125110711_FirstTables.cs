using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Ramwright.Records.Store.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class FirstTables : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "Entries",
                columns: table => new
                {
                    Number = table.Column<long>(type: "INTEGER", nullable: false),
                    Stream = table.Column<string>(type: "TEXT", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", nullable: false),
                    At = table.Column<string>(type: "TEXT", nullable: false),
                    By = table.Column<string>(type: "TEXT", nullable: false),
                    Token = table.Column<string>(type: "TEXT", nullable: false),
                    Place = table.Column<int>(type: "INTEGER", nullable: false),
                    Body = table.Column<string>(type: "TEXT", nullable: false),
                    PreviousHash = table.Column<string>(type: "TEXT", nullable: false),
                    Hash = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Entries", x => x.Number);
                });

            migrationBuilder.CreateTable(
                name: "Jobs",
                columns: table => new
                {
                    Id = table.Column<string>(type: "TEXT", nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    Station = table.Column<int>(type: "INTEGER", nullable: false),
                    Tool = table.Column<string>(type: "TEXT", nullable: false),
                    ModelId = table.Column<string>(type: "TEXT", nullable: false),
                    Customer = table.Column<string>(type: "TEXT", nullable: false),
                    Lot = table.Column<string>(type: "TEXT", nullable: true),
                    Complaint = table.Column<string>(type: "TEXT", nullable: false),
                    Promised = table.Column<string>(type: "TEXT", nullable: true),
                    OpenedAt = table.Column<string>(type: "TEXT", nullable: false),
                    LastAt = table.Column<string>(type: "TEXT", nullable: false),
                    Version = table.Column<long>(type: "INTEGER", nullable: false),
                    Verdict = table.Column<int>(type: "INTEGER", nullable: true),
                    Quarantined = table.Column<bool>(type: "INTEGER", nullable: false),
                    End = table.Column<int>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Jobs", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Tools",
                columns: table => new
                {
                    Serial = table.Column<string>(type: "TEXT", nullable: false),
                    ModelId = table.Column<string>(type: "TEXT", nullable: false),
                    Owner = table.Column<string>(type: "TEXT", nullable: false),
                    Entry = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Tools", x => x.Serial);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Entries_Stream_Number",
                table: "Entries",
                columns: new[] { "Stream", "Number" });

            migrationBuilder.CreateIndex(
                name: "IX_Entries_Token_Place",
                table: "Entries",
                columns: new[] { "Token", "Place" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Jobs_End",
                table: "Jobs",
                column: "End");

            migrationBuilder.CreateIndex(
                name: "IX_Jobs_Number",
                table: "Jobs",
                column: "Number");

            migrationBuilder.CreateIndex(
                name: "IX_Jobs_Tool",
                table: "Jobs",
                column: "Tool");

            // Entries are added, never changed: the database itself refuses the rest.
            migrationBuilder.Sql("""
                CREATE TRIGGER "Entries_no_update" BEFORE UPDATE ON "Entries"
                BEGIN SELECT RAISE(ABORT, 'an entry is never changed'); END;
                """);
            migrationBuilder.Sql("""
                CREATE TRIGGER "Entries_no_delete" BEFORE DELETE ON "Entries"
                BEGIN SELECT RAISE(ABORT, 'an entry is never taken out'); END;
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "Entries");

            migrationBuilder.DropTable(
                name: "Jobs");

            migrationBuilder.DropTable(
                name: "Tools");
        }
    }
}
