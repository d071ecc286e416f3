using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Studio.Data.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class AnyMould : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "Parts",
                table: "Piece",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Sheets",
                table: "Piece",
                type: "TEXT",
                nullable: false,
                defaultValue: "[]");

            migrationBuilder.AddColumn<string>(
                name: "Checks",
                table: "Mould",
                type: "TEXT",
                nullable: false,
                defaultValue: "[]");

            migrationBuilder.AddColumn<string>(
                name: "Mesh",
                table: "Mould",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Readings",
                table: "Mould",
                type: "TEXT",
                nullable: false,
                defaultValue: "[]");

            migrationBuilder.AddColumn<double>(
                name: "VolumeFactor",
                table: "Mould",
                type: "REAL",
                nullable: false,
                defaultValue: 1.0);

            migrationBuilder.AddColumn<double>(
                name: "VolumeSpreadPercent",
                table: "Mould",
                type: "REAL",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "Tip",
                columns: table => new
                {
                    Id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Place = table.Column<string>(type: "TEXT", nullable: false),
                    Text = table.Column<string>(type: "TEXT", nullable: false),
                    Source = table.Column<string>(type: "TEXT", nullable: false),
                    Seed = table.Column<string>(type: "TEXT", nullable: false),
                    Retired = table.Column<bool>(type: "INTEGER", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Tip", x => x.Id);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Tip_Place",
                table: "Tip",
                column: "Place");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "Tip");

            migrationBuilder.DropColumn(
                name: "Parts",
                table: "Piece");

            migrationBuilder.DropColumn(
                name: "Sheets",
                table: "Piece");

            migrationBuilder.DropColumn(
                name: "Checks",
                table: "Mould");

            migrationBuilder.DropColumn(
                name: "Mesh",
                table: "Mould");

            migrationBuilder.DropColumn(
                name: "Readings",
                table: "Mould");

            migrationBuilder.DropColumn(
                name: "VolumeFactor",
                table: "Mould");

            migrationBuilder.DropColumn(
                name: "VolumeSpreadPercent",
                table: "Mould");
        }
    }
}
