using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Studio.Data.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class QuoteSheet : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "Form",
                table: "Quote",
                type: "TEXT",
                nullable: false,
                defaultValue: "");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "Form",
                table: "Quote");
        }
    }
}
